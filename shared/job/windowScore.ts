import { median } from '../base/statistics'
import type { Job } from './job'
import { windowHeld } from './windowHeld'

/** The tool's own score, over jobs in which something was found. */
export interface WindowScore {
  /** Windows that were put to the test. */
  readonly windows: number
  /** Of them, those that held the damage. */
  readonly held: number
  /** How many would have, if every window kept just what it promised. */
  readonly promised: number
  /** Middle distance from the place named to the damage, m, ≥ 0; `null` when no damage was found. */
  readonly medianErrorM: number | null
}

/**
 * How the windows did that were shown before something was found, over all lines of all jobs: "12 of 14 windows held".
 *
 * Every finding with a window counts, opened or by eye or ear, whatever the verdict was: an unsure answer's window promises
 * its share just as well. What was only found where no window had been shown does not count.
 *
 * @example windowScore([job]) // { windows: 1, held: 1, promised: 0.8, medianErrorM: 0.07 }
 */
export function windowScore(jobs: readonly Job[]): WindowScore {
  const found = jobs.flatMap(({ lines }) => lines.flatMap((line) => line.found ?? []))
  const tested = found.filter(({ shown }) => shown !== null)
  const results = tested.map((each) => windowHeld(each)!)
  const errors = results.flatMap(({ errorM }) => (errorM === null ? [] : [Math.abs(errorM)]))
  return {
    windows: tested.length,
    held: results.filter(({ held }) => held).length,
    promised: tested.reduce((sum, { shown }) => sum + shown!.probability, 0),
    medianErrorM: errors.length === 0 ? null : median(errors),
  }
}
