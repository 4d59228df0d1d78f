import type { PracticeAnswer } from '../../../shared/practice/answers'
import { DRILLS, type Drill } from '../../../shared/practice/drills/question'
import type { SetAnswer } from '../../../shared/practice/set/practiceSet'
import type { SetScores } from '../../../shared/practice/set/scoresFile'
import type { LoggedAnswer, RepeatedAnswer } from '../../../shared/practice/set/setLog'
import type { Database } from './database'

/** A round under way; where in it one is follows from the answers. */
export interface PracticeRound {
  readonly drill: Drill
  /** Count of all answers when it began. */
  readonly from: number
  /** The last answer is being explained. */
  readonly answered: boolean
}

/** What of a practice is kept on this device. */
export interface KeptPractice {
  /** In order of time. */
  readonly answers: readonly PracticeAnswer[]
  readonly round: PracticeRound | null
  /** Seed of this device's questions. */
  readonly own: string
  /** The job of the dry run. */
  readonly dryJobId: string | null
}

// Each answer has a key of its own: what another tab adds meanwhile is not overwritten.
const ANSWERS = IDBKeyRange.bound('practice/answer/', 'practice/answer/~')

export async function loadPractice(database: Database): Promise<KeptPractice> {
  const [answers, round, own, dry] = await Promise.all([
    database.getAll('device', ANSWERS),
    database.get('device', 'practice/round'),
    database.get('device', 'practice/own'),
    database.get('device', 'practice/dry'),
  ])
  const seed = typeof own === 'string' ? own : crypto.getRandomValues(new Uint32Array(2)).join('-')
  if (own !== seed) await database.put('device', seed, 'practice/own')
  return {
    answers: answers as PracticeAnswer[],
    round: roundOf(round),
    own: seed,
    dryJobId: typeof dry === 'string' ? dry : null,
  }
}

function roundOf(kept: unknown): PracticeRound | null {
  const { drill, from, answered } = (kept ?? {}) as Partial<Record<string, unknown>>
  const known = DRILLS.find((each) => each === drill)
  return known === undefined || typeof from !== 'number' ? null : { drill: known, from, answered: answered === true }
}

/** @throws what the device throws when it has no room left. */
export async function keepAnswer(database: Database, answer: PracticeAnswer): Promise<void> {
  const key = `practice/answer/${answer.timeS.toFixed(3).padStart(16, '0')} ${answer.order.seed}`
  await database.put('device', answer, key)
}

export async function keepRound(database: Database, round: PracticeRound | null): Promise<void> {
  if (round === null) await database.delete('device', 'practice/round')
  else await database.put('device', round, 'practice/round')
}

export async function keepDryJob(database: Database, jobId: string): Promise<void> {
  await database.put('device', jobId, 'practice/dry')
}

/** A set as it is kept: the file itself, what was answered here, and the scores that came back. */
export interface KeptSet {
  readonly id: string
  readonly name: string
  readonly zip: Blob
  readonly answers: readonly LoggedAnswer[]
  /** Of clips that were missed and came back; not there in sets that an older version kept. */
  readonly repeats?: readonly RepeatedAnswer[]
  /** What the machine said of the clips that were answered; not there in sets that an older version kept. */
  readonly machine?: readonly SetAnswer[]
  readonly scores: readonly SetScores[]
}

const SETS = IDBKeyRange.bound('practice/set/', 'practice/set/~')

export async function loadSets(database: Database): Promise<KeptSet[]> {
  return (await database.getAll('device', SETS)) as KeptSet[]
}

/** @throws what the device throws when it has no room left. */
export async function keepSet(database: Database, set: KeptSet): Promise<void> {
  await database.put('device', set, `practice/set/${set.id}`)
}

export async function dropSet(database: Database, id: string): Promise<void> {
  await database.delete('device', `practice/set/${id}`)
}
