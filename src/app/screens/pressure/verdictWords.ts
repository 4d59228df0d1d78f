import type { HoldVerdict } from '../../../../shared/pressure/holdVerdicts'

/** What a verdict is called on screen. */
export const VERDICT_WORDS = {
  holds: 'label_hold_holds',
  drops: 'label_hold_drops',
  'would not come up to pressure': 'label_hold_not_up',
  'cannot tell': 'label_hold_cannot_tell',
} as const satisfies Record<HoldVerdict, string>
