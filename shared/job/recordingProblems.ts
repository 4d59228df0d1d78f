import type { Problem } from '../base/problem'
import { phoneProblems } from '../sweep/phoneProblems'
import { phoneAccountOf } from './phoneAccountOf'
import type { Recording } from './recording'

/** What a phone's own account of a recording says against it. */
export function recordingProblems(recording: Recording): Problem[] {
  return phoneProblems(phoneAccountOf(recording))
}
