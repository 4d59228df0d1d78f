import type { JobLine } from '../../../shared/job/job'
import type { LocateAnswer } from '../../../shared/locate/answer'
import type { NoticePlace } from '../store/state'

/** What the part and its form get. */
export interface FoundPartProps {
  readonly line: JobLine
  /** The answer on show; `null` where none is. */
  readonly answer: Pick<LocateAnswer, 'sources' | 'verdict'> | null
  /** Where troubles with a photo are told. */
  readonly place: NoticePlace
}
