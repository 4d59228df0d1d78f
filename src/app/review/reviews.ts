import type { Job } from '../../../shared/job/job'
import type { Database } from '../storage/database'
import { keepReviews } from '../storage/reviews'
import { withSession } from '../store/changes'
import { NO_DRAFT, type Review, reviewKey } from '../store/review'
import type { AppState } from '../store/state'
import type { Store } from '../store/store'

interface ReviewParts {
  readonly store: Store
  readonly database: Database
}

/** How far hearing a line has come; a line of one's own job is not blind. */
export function reviewOf({ session }: AppState, jobId: string, lineId: string): Review {
  return session.reviews[reviewKey(jobId, lineId)] ?? firstReview(jobId, lineId)
}

const FIRST = new Map<string, Review>()

/** The same object for the same line, as whoever renders compares them. */
function firstReview(jobId: string, lineId: string): Review {
  const key = reviewKey(jobId, lineId)
  const first = FIRST.get(key) ?? { jobId, lineId, blind: false, seed: null, laid: true, heard: [], draft: NO_DRAFT }
  FIRST.set(key, first)
  return first
}

/** Whether the answer of the line on show is not to be shown yet. */
export function isBlind({ job, session: { lineId, reviews } }: AppState): boolean {
  return job !== null && lineId !== null && reviews[reviewKey(job.id, lineId)]?.blind === true
}

/** Whether there is a line of the open job whose answer is not to be shown yet. */
export function isAnyBlind({ job, session: { reviews } }: AppState): boolean {
  return job?.lines.some(({ id }) => reviews[reviewKey(job.id, id)]?.blind === true) === true
}

/** Whether there is a line of a job, open or not, whose answer is not to be shown yet. */
export function isJobBlind({ session }: AppState, jobId: string): boolean {
  return Object.values(session.reviews).some((review) => review.jobId === jobId && review.blind)
}

/** Changes what is noted of a line, and keeps it. */
export async function changeReview(
  { store, database }: ReviewParts,
  { jobId, lineId }: Pick<Review, 'jobId' | 'lineId'>,
  change: (review: Review) => Review,
): Promise<void> {
  const review = change(reviewOf(store.get(), jobId, lineId))
  put(store, [review])
  await keepReviews(database, [review])
}

/** Every line of a job that came from elsewhere is heard before its answer is shown. */
export async function beginBlind({ store, database }: ReviewParts, job: Job): Promise<void> {
  const heardLines = job.lines.filter(({ sweeps }) => sweeps.some(({ clips }) => clips.length > 0))
  const begun = heardLines
    .filter(({ id }) => store.get().session.reviews[reviewKey(job.id, id)] === undefined)
    .map(({ id }): Review => ({ ...firstReview(job.id, id), blind: true }))
  await keepReviews(database, begun)
  put(store, begun)
}

function put(store: Store, reviews: readonly Review[]): void {
  const changed = Object.fromEntries(reviews.map((review) => [reviewKey(review.jobId, review.lineId), review]))
  store.update((state) => withSession(state, { reviews: { ...state.session.reviews, ...changed } }))
}
