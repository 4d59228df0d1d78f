export const RULED_OUT = ['pump', 'valves', 'fittings', 'basin', 'other lines'] as const
/** What may lose water before the line does, and was looked at. */
export type RuledOut = (typeof RULED_OUT)[number]

export const WATER_PASSES = ['freely', 'poorly', 'not at all'] as const
/** Whether water passes the line at all: a crushed line both leaks and blocks. */
export type WaterPasses = (typeof WATER_PASSES)[number]

/** What the customer said, what was ruled out before the line was suspected, and how the line was shut off. */
export interface Complaint {
  readonly said: string
  readonly ruledOut: readonly RuledOut[]
  /** Which line was isolated and how: plugs, caps, valves, and where. */
  readonly isolation: string
  /** `null` when not tried. */
  readonly waterPasses: WaterPasses | null
}

export const NO_COMPLAINT: Complaint = { said: '', ruledOut: [], isolation: '', waterPasses: null }

export const MOST_COMPLAINT = 2000
