export const HOLD_VERDICTS = ['holds', 'drops', 'would not come up to pressure', 'cannot tell'] as const
export type HoldVerdict = (typeof HOLD_VERDICTS)[number]
