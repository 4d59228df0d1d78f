import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer, PointAnswer } from '../../../../shared/locate/answer'

/** What the sketch of the place gets. */
export interface PlaceSketchProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
  /** Number of the point looked at; `null` for none. */
  readonly chosenPoint: number | null
  readonly onChoose: (point: number | null) => void
}

/** What the panel of a chosen point gets. */
export interface PointPanelProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
  readonly point: PointAnswer
  readonly onClose: () => void
}

/** What asks for the confirmation by ear gets. */
export interface ConfirmPanelProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}
