/**
 * Something that two copies of a job tell differently: the job shows one, and this is another. Nothing is decided by a
 * program; a person may take it instead, or let it go.
 */
export interface KeptApart {
  /** Where in the job: its keys, and ids in its lists, with slashes between. */
  readonly place: string
  /** What another copy holds there, as in the job's file. */
  readonly value: unknown
}

export const MOST_KEPT_APART = 10_000
