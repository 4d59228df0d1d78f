import type { Job, JobLine } from '../../../../shared/job/job'
import type { Opinion } from '../../../../shared/job/opinions'
import { signedOpinion } from '../../../../shared/opinion/signedOpinion'
import { withOpinions } from '../../../../shared/opinion/withOpinions'
import { joinJob } from '../../jobfile/joinJob'
import { newId } from '../../newId'
import { changeReview } from '../../review/reviews'
import type { App } from '../../startApp'
import { deviceKey } from '../../storage/ears'
import { NO_DRAFT, type Review } from '../../store/review'
import { VERSION } from '../../version'

interface Committing {
  readonly job: Job
  readonly line: JobLine
  readonly review: Review
  readonly reviewer: string
}

/** Signs what was noted of a line and puts it into its job; from then on answer and opinions are shown. */
export async function commitOpinion(app: App, { job, line, review, reviewer }: Committing): Promise<void> {
  const { says, alongM, fromM, toM, confidence, again, note, comments } = review.draft
  const isHere = says === 'here'
  const opinion: Opinion = {
    id: newId(),
    jobId: job.id,
    lineId: line.id,
    timeS: app.nowS(),
    reviewer,
    says,
    alongM: isHere ? alongM : null,
    windowM: isHere && fromM !== null && toM !== null ? [fromM, toM] : null,
    confidence: isHere ? confidence : null,
    again: [...again].sort((a, b) => a.point - b.point),
    note: note.trim(),
    comments,
    seen: {
      answer: !review.blind,
      opinions: !review.blind && (job.opinions ?? []).some(({ lineId }) => lineId === line.id),
      shuffled: review.seed !== null,
      heard: review.heard,
    },
    version: VERSION,
    deviceKey: null,
    signature: null,
  }
  const signed = await signedOpinion(opinion, await deviceKey(app.database))
  await joinJob(app, job.id, (own) => withOpinions(own, [signed], 'opinion'))
  await changeReview(app, review, (before) => ({ ...before, blind: false, laid: true, draft: NO_DRAFT }))
}
