import { useCallback } from 'react'
import { useApp, useAppState } from '../../frame/useApp'
import { changeReview, reviewOf } from '../../review/reviews'
import { type Database, isFull } from '../../storage/database'
import { withSession } from '../../store/changes'
import type { Draft, Review } from '../../store/review'
import type { Store } from '../../store/store'

export interface ReviewHere {
  readonly review: Review
  readonly change: (change: (review: Review) => Review) => void
  readonly draft: (part: Partial<Draft>) => void
}

/** What is noted of a line so far, and how to note more; it outlives the page. */
export function useReview(jobId: string, lineId: string): ReviewHere {
  const { store, database } = useApp()
  const review = useAppState((state) => reviewOf(state, jobId, lineId))
  const change = useCallback(
    (how: (review: Review) => Review) => void kept({ store, database }, { jobId, lineId }, how),
    [store, database, jobId, lineId],
  )
  const draft = useCallback(
    (part: Partial<Draft>) => change((before) => ({ ...before, draft: { ...before.draft, ...part } })),
    [change],
  )
  return { review, change, draft }
}

async function kept(
  parts: { readonly store: Store; readonly database: Database },
  of: Pick<Review, 'jobId' | 'lineId'>,
  how: (review: Review) => Review,
): Promise<void> {
  try {
    await changeReview(parts, of, how)
  } catch (error) {
    parts.store.update((state) => withSession(state, { saving: { state: 'failed', full: isFull(error) } }))
  }
}
