import { decodeText } from '../../base/decodeText'
import { FormatError } from '../../base/errors'
import { jsonObject, optionalList, requiredNumber, requiredText } from '../../base/jsonFields'
import { parseJson } from '../../base/parseJson'
import { shown } from '../../base/shown'
import { OPTIONS } from '../drills/question'
import { checkFormat } from './openSet'
import { type PracticeSet, SET_LIMITS, type SetAnswer } from './practiceSet'

const SCORES_FORMAT = 'yardhark-practice-scores'
const SCORES_VERSION = 1

/** What somebody answered to a set. */
export interface SetScores {
  readonly setId: string
  /** As they called themselves; may be empty. */
  readonly by: string
  /** Each clip once, in the order it was answered. */
  readonly answers: readonly SetAnswer[]
}

/** Scores as a small JSON file. */
export function writeScores({ setId, by, answers }: SetScores): string {
  return `${JSON.stringify({ format: SCORES_FORMAT, version: SCORES_VERSION, set: setId, by, answers }, null, 2)}\n`
}

/**
 * Reads scores that came back.
 *
 * @param sets Those that are kept here: the scores must be of one of them, clip by clip.
 * @throws {FormatError} no scores; of a set that is not here; a clip that the set does not have.
 */
export function readScores(bytes: Uint8Array, fileName: string, sets: readonly PracticeSet[]): SetScores {
  const told = jsonObject(parseJson(decodeText(bytes, fileName), fileName), fileName, '')
  checkFormat(told, SCORES_FORMAT, SCORES_VERSION)
  const setId = requiredText(told, 'set', ['the digest of a set'])
  const set = sets.find(({ id }) => id === setId)
  if (set === undefined) {
    throw new FormatError(fileName, 'set', 'is of a set that is not on this device; open the set first')
  }
  const seen = new Set<number>()
  const answers = optionalList(told, 'answers', SET_LIMITS.clips).map((value, i) => {
    const place = `answers[${i}]`
    const answer = jsonObject(value, fileName, place)
    const clip = requiredNumber(answer, 'clip', { low: 0, high: set.clips.length - 1 })
    if (!Number.isInteger(clip)) throw new FormatError(fileName, `${place}.clip`, 'is no whole number; write one')
    if (seen.has(clip)) throw new FormatError(fileName, `${place}.clip`, `is ${clip} again; keep one answer a clip`)
    seen.add(clip)
    const known: readonly string[] = OPTIONS[set.drill]
    const said = requiredText(answer, 'said', known)
    if (!known.includes(said)) {
      throw new FormatError(fileName, `${place}.said`, `is ${shown(said)}; write one of ${known.join(', ')}`)
    }
    return { clip, said }
  })
  return { setId, by: requiredText(told, 'by', ['a text']).slice(0, SET_LIMITS.name), answers }
}
