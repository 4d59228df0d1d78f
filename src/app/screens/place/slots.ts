import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer, PointAnswer } from '../../../../shared/locate/answer'
import type { PanelClip } from '../../sounds/panelClips'

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
  /** The spectrum of the point was drawn and in view for a second. */
  readonly onSpectrumSeen?: ((point: number) => void) | undefined
  /** A clip, of this point or of one beside it, has really sounded for a second; told once a clip. */
  readonly onPlayed?: ((clip: PanelClip) => void) | undefined
}

/** What asks for the confirmation by ear gets. */
export interface ConfirmPanelProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}
