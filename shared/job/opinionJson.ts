import type { Opinion } from './opinions'

/** An opinion in the form of its file; keys always in this order, so that the same opinion is the same text. */
export function opinionJson(opinion: Opinion): Record<string, unknown> {
  const { seen } = opinion
  return {
    id: opinion.id,
    job_id: opinion.jobId,
    line_id: opinion.lineId,
    time_s: opinion.timeS,
    reviewer: opinion.reviewer,
    says: opinion.says,
    along_m: opinion.alongM,
    window_m: opinion.windowM,
    confidence: opinion.confidence,
    again: opinion.again.map(({ point, note }) => ({ point, note })),
    note: opinion.note,
    comments: opinion.comments.map(({ clip, atS, text }) => ({ clip, at_s: atS, text })),
    seen: { answer: seen.answer, opinions: seen.opinions, shuffled: seen.shuffled, heard: seen.heard },
    version: opinion.version,
    device_key: opinion.deviceKey,
    signature: opinion.signature,
  }
}

/** The text that is signed: the opinion as JSON without its signature, in one line. */
export function opinionText(opinion: Opinion): string {
  return JSON.stringify(opinionJson({ ...opinion, signature: null }))
}
