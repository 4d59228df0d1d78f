import type { Site } from '../../../../shared/job/site'
import type { Line } from '../../../../shared/line/line'

/** What every part of the form gets. */
export interface LinePartProps {
  readonly lineId: string
  readonly line: Line
  readonly site: Site
  readonly disabled: boolean
  /** The end of one change: what follows is another step of undo. */
  readonly onDone: () => void
}

/** Limits as the reader of a line has them, m. */
export const ALONG_LIMITS = { least: -10_000, most: 10_000 }
export const LENGTH_LIMITS = { least: 0.01, most: 10_000 }
export const DEPTH_LIMITS = { least: 0.01, most: 20 }
