import type { Question } from '../../../../shared/practice/drills/question'

/** The sound of a clip of a question as the player takes it. */
export function trackOf(question: Question, index: number) {
  const { clip, name } = question.clips[index]!
  return { id: `clip ${name}`, samples: clip.channels[0]!, sampleRateHz: clip.sampleRateHz }
}
