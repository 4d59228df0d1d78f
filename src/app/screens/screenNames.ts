/** Every screen, in the order of the bar. `jobs`, `practice` and `help` need no open job. */
export const SCREEN_NAMES = [
  'jobs',
  'line',
  'pressure',
  'listen',
  'place',
  'mend',
  'report',
  'secondear',
  'practice',
  'help',
] as const

export type ScreenName = (typeof SCREEN_NAMES)[number]
