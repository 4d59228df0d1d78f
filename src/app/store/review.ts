import type { OpinionComment, RecordAgain } from '../../../shared/job/opinions'

/** What somebody has noted while listening and not committed yet. */
export interface Draft {
  readonly says: 'here' | 'cannot hear it' | 'record again'
  /** m along; `null` as long as nothing was said. */
  readonly alongM: number | null
  readonly fromM: number | null
  readonly toM: number | null
  /** 0 to 1. */
  readonly confidence: number | null
  readonly again: readonly RecordAgain[]
  readonly note: string
  readonly comments: readonly OpinionComment[]
  /** How clearly a leak was heard, by the number of the point in the job: 0 not at all to 3 clearly. */
  readonly marks: Readonly<Record<number, number>>
}

/** How far somebody has come with hearing a line for the first time, and what was seen of it. */
export interface Review {
  readonly jobId: string
  readonly lineId: string
  /** Answer and opinions are not shown yet. */
  readonly blind: boolean
  /** Points are heard in another order under other numbers, by this seed; `null`: in their own. */
  readonly seed: string | null
  /** The order was told: where each point lies is shown. */
  readonly laid: boolean
  /** Digests of clips that sounded for a second. */
  readonly heard: readonly string[]
  readonly draft: Draft
}

export const NO_DRAFT: Draft = {
  says: 'here',
  alongM: null,
  fromM: null,
  toM: null,
  confidence: null,
  again: [],
  note: '',
  comments: [],
  marks: {},
}

export const reviewKey = (jobId: string, lineId: string) => `review/${jobId}/${lineId}`
