import type { Drill } from '../../../../shared/practice/drills/question'

/** Name and explanation of each drill. */
export const DRILL_WORDS = {
  leak: ['label_drill_leak', 'drill_leak'],
  nearer: ['label_drill_nearer', 'drill_nearer'],
  what: ['label_drill_what', 'drill_what'],
  place: ['label_drill_place', 'drill_place'],
  gauge: ['label_drill_gauge', 'drill_gauge'],
} as const satisfies Record<Drill, readonly [string, string]>

/** What can be answered, by drill and answer: its words, and why it is so. */
export const ANSWER_WORDS = {
  leak: {
    leak: ['label_answer_leak', 'why_bubbling'],
    'no leak': ['label_answer_no_leak', 'why_no_leak'],
  },
  nearer: { A: ['label_answer_a', 'why_nearer'], B: ['label_answer_b', 'why_nearer'] },
  what: {
    bubbling: ['label_answer_bubbling', 'why_bubbling'],
    footstep: ['label_answer_footstep', 'why_footstep'],
    pump: ['label_answer_pump', 'why_pump'],
    wind: ['label_answer_wind', 'why_wind'],
    rain: ['label_answer_rain', 'why_rain'],
    voice: ['label_answer_voice', 'why_voice'],
  },
  place: {},
  gauge: {
    tight: ['label_answer_tight', 'why_tight'],
    leak: ['label_answer_leaking', 'why_leaking'],
    'weeping plug': ['label_answer_weeping', 'why_weeping'],
    warming: ['label_answer_warming', 'why_warming'],
    'trapped air': ['label_answer_air', 'why_air'],
  },
} as const

/** The same, for an answer that is only known as text. */
export function answerEntry(drill: Drill, answer: string): readonly [AnswerLabel, AnswerWhy] | null {
  return (ANSWER_WORDS[drill] as Readonly<Record<string, readonly [AnswerLabel, AnswerWhy]>>)[answer] ?? null
}

type Entries<D> = D extends Drill ? (typeof ANSWER_WORDS)[D][keyof (typeof ANSWER_WORDS)[D]] : never
type AnswerLabel = Entries<Drill>[0]
type AnswerWhy = Entries<Drill>[1]

/** What the machine says where it is no answer of the drill. */
export const MACHINE_WORDS = {
  'something else': 'label_machine_else',
  holds: 'label_machine_holds',
  drops: 'label_machine_drops',
  'cannot tell': 'label_machine_cannot',
  'no leak heard': 'label_machine_none',
} as const
