/** How one part of a job's JSON is merged. */
export type MergeRule =
  /** One value. Two different ones are kept side by side. */
  | { readonly kind: 'value' }
  /** As in the copy that receives; of no meaning elsewhere. */
  | { readonly kind: 'own' }
  | { readonly kind: 'least' }
  | { readonly kind: 'greatest' }
  /** A list that only grows at its end: the longer one, where one goes on where the other ends. */
  | { readonly kind: 'log' }
  /** A list without order whose entries are what they are: all of both. */
  | { readonly kind: 'set' }
  /** Key by key; keys without a rule are single values. */
  | { readonly kind: 'parts'; readonly parts: Readonly<Record<string, MergeRule>> }
  /** A list whose entries are told apart by `idOf`; those of one id are merged. */
  | {
      readonly kind: 'list'
      readonly idOf: (entry: JsonFields, occurrence: number) => string
      /** What two entries must share to be counted as occurrences of each other; `null`: ids differ by themselves. */
      readonly sameOf: ((entry: JsonFields) => string) | null
      readonly entry: MergeRule
      /** The number by which entries stand when some were added; `null`: added ones stand last. */
      readonly order: string | null
    }

export type JsonFields = Readonly<Record<string, unknown>>

const OWN: MergeRule = { kind: 'own' }
const SET: MergeRule = { kind: 'set' }

function parts(rules: Readonly<Record<string, MergeRule>> = {}): MergeRule {
  return { kind: 'parts', parts: rules }
}

function listBy(key: string, entry: MergeRule, order: string | null = null): MergeRule {
  return { kind: 'list', idOf: (fields) => String(fields[key]), sameOf: null, entry, order }
}

/** A clip is its sound, whatever was typed of it since; without a sound it is its file. */
function soundOf(clip: JsonFields): string {
  return typeof clip.sha256 === 'string' ? clip.sha256 : `file ${String(clip.file)}`
}

const CLIPS: MergeRule = {
  kind: 'list',
  idOf: (clip, occurrence) => `${soundOf(clip)} ${occurrence}`,
  sameOf: soundOf,
  entry: parts({ problems: SET, taken_out: { kind: 'greatest' } }),
  order: 'point',
}

/** Opinions are never changed: under one id two different ones are two. */
const OPINIONS: MergeRule = {
  kind: 'list',
  idOf: (opinion) => JSON.stringify(opinion),
  sameOf: null,
  entry: OWN,
  order: 'time_s',
}

const LINE = parts({
  line: parts(),
  problems: SET,
  sweeps: listBy('name', parts({ id: OWN, problems: SET, clips: CLIPS })),
  confirmations: listBy('id', parts(), 'time_s'),
  planned_points: listBy('point', parts(), 'point'),
  signs: listBy('id', parts()),
  site: parts(),
  complaint: parts({ ruled_out: SET }),
  pressure_tests: listBy('id', parts({ readings: { kind: 'log' } }), 'created_s'),
  found: listBy('id', parts(), 'time_s'),
  mend: parts({ parts: listBy('id', parts()), joint: parts() }),
})

/** How two copies of a job become one. What has no rule here is a single value, new parts too, so that none is lost. */
export const JOB_RULE: MergeRule = parts({
  schema_version: OWN,
  created_s: { kind: 'least' },
  changed_s: { kind: 'greatest' },
  lines: listBy('id', LINE),
  hidden_cautions: SET,
  opinions: OPINIONS,
})
