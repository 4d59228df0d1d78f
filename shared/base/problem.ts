/**
 * How much a problem takes away from a clip, a point or a sweep:
 * `spoilt` is set aside, `weak` is used but weighs less, `note` changes nothing but should be known.
 */
export type Severity = 'spoilt' | 'weak' | 'note'

/**
 * Something wrong with a clip, a point, a sheet or a sweep, as the core returns it: a key of shared/words and the
 * values its sentence needs. The core never makes the sentence.
 */
export interface Problem {
  readonly key: string
  readonly severity: Severity
  readonly values: Readonly<Record<string, number | string>>
}
