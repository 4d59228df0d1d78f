import { InputError } from '../base/errors'
import { DETECTOR_FEATURES } from './detectorFeatures'
import { type Example, FEWEST } from './example'

/**
 * Leaves each clip in once, in an order that does not depend on the order given.
 *
 * @throws {InputError} the same clip under two labels, one class only, too few clips or jobs, values of another list:
 *   each names the thing and the mend.
 */
export function checkExamples(examples: readonly Example[]): Example[] {
  const byClip = new Map<string, Example>()
  for (const example of examples) {
    if (example.values.length !== DETECTOR_FEATURES.length) {
      throw new InputError(
        `${example.name} has ${example.values.length} values; this version measures ${DETECTOR_FEATURES.length}: measure it anew`,
      )
    }
    const before = byClip.get(example.sha256)
    if (before !== undefined && before.isLeak !== example.isLeak) {
      const [leak, other] = example.isLeak ? [example, before] : [before, example]
      throw new InputError(
        `${leak.name} is labelled a leak and ${other.name}, the very same clip, is labelled none; correct one of the two labels`,
      )
    }
    if (before === undefined || example.name < before.name) byClip.set(example.sha256, example)
  }
  const kept = [...byClip.values()].sort((a, b) => (a.sha256 < b.sha256 ? -1 : 1))
  checkNumbers(kept)
  return kept
}

function checkNumbers(kept: readonly Example[]): void {
  const leaks = kept.filter(({ isLeak }) => isLeak).length
  const others = kept.length - leaks
  if (leaks === 0 || others === 0) {
    const missing = leaks === 0 ? 'a leak' : 'no leak'
    throw new InputError(`no clip is labelled as ${missing}; a detector needs clips of both kinds`)
  }
  if (Math.min(leaks, others) < FEWEST.ofEither) {
    throw new InputError(
      `${leaks} clips of leaks and ${others} of none; at least ${FEWEST.ofEither} of each are needed, better some hundreds`,
    )
  }
  const jobs = new Set(kept.map(({ job }) => job)).size
  if (jobs < FEWEST.jobs) {
    throw new InputError(
      `all clips come from ${jobs === 1 ? 'one job' : `${jobs} jobs`}; at least ${FEWEST.jobs} are needed, so that some can be kept back to test on`,
    )
  }
}
