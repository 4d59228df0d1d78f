export const OPINION_SAYS = ['here', 'cannot hear it', 'record again'] as const

/** A remark on a clip, at a moment of it or on the whole. */
export interface OpinionComment {
  /** SHA-256 of the clip as it came. */
  readonly clip: string
  /** From its start, s; `null`: the clip as a whole. */
  readonly atS: number | null
  readonly text: string
}

/** A point where the reviewer would record again: it becomes a thing to do on Listen. */
export interface RecordAgain {
  readonly point: number
  readonly note: string
}

/** What had been seen and heard before the opinion was committed. All false and nobody's opinion seen: it was blind. */
export interface OpinionSeen {
  /** The machine's answer, a ranking or a marker. */
  readonly answer: boolean
  /** Somebody else's opinion. */
  readonly opinions: boolean
  /** Whether points were in another order under other numbers. */
  readonly shuffled: boolean
  /** Clips that were played, by digest, each once, in order of their digests. */
  readonly heard: readonly string[]
}

/** What a second ear says of a line. Never changed once it is committed: another opinion is another one. */
export interface Opinion {
  readonly id: string
  readonly jobId: string
  readonly lineId: string
  /** When it was committed, s since 1970-01-01 UTC. */
  readonly timeS: number
  /** As the reviewer calls themselves; may be empty. */
  readonly reviewer: string
  readonly says: (typeof OPINION_SAYS)[number]
  /** Along the line, m; `null` unless it says here. */
  readonly alongM: number | null
  readonly windowM: readonly [number, number] | null
  /** The chance, 0 to 1, that the leak is in the window; `null` unless it says here. */
  readonly confidence: number | null
  readonly again: readonly RecordAgain[]
  readonly note: string
  readonly comments: readonly OpinionComment[]
  readonly seen: OpinionSeen
  /** Of the program. */
  readonly version: string
  /** Public key of the device, 65 bytes of a point of P-256, base64url; `null`: the device had none. */
  readonly deviceKey: string | null
  /** ECDSA with SHA-256 over `opinionText`, 64 bytes, base64url; `null` where there is no key. */
  readonly signature: string | null
}

export const MOST_OPINIONS = 1000
export const MOST_COMMENTS = 1000
export const MOST_OPINION_TEXT = 2000
export const MOST_REVIEWER = 100
