import { useCallback, useEffect, useState } from 'react'
import { FormatError } from '../../../../shared/base/errors'
import { openSet } from '../../../../shared/practice/set/openSet'
import { packSet } from '../../../../shared/practice/set/packSet'
import type { PracticeSet } from '../../../../shared/practice/set/practiceSet'
import { readScores, writeScores } from '../../../../shared/practice/set/scoresFile'
import type { LoggedAnswer } from '../../../../shared/practice/set/setLog'
import type { Keyed } from '../../../../shared/words/sentence'
import { useApp } from '../../frame/useApp'
import { isFull } from '../../storage/database'
import { digestOf } from '../../storage/digestOf'
import { dropSet, type KeptSet, keepSet, loadSets } from '../../storage/practice'

/** A set that is kept here, opened. */
export interface OpenedSet {
  readonly kept: KeptSet
  readonly set: PracticeSet
}

export interface Sets {
  readonly sets: readonly OpenedSet[]
  /** Sets that are kept and can no longer be opened, and why. */
  readonly broken: readonly BrokenSet[]
  /** What was done, or went wrong, and what was left out; `null`: nothing to tell. */
  readonly said: { readonly severity: 'good' | 'wrong'; readonly words: Keyed; readonly more: readonly Keyed[] } | null
  readonly working: boolean
  /** Makes a set of what is gathered, and keeps it. */
  readonly make: (gather: () => Promise<GatheredSet>) => void
  /** A set, or scores of one. */
  readonly open: (file: File) => void
  readonly drop: (id: string) => void
  /** An answer, and what the machine said of the same clip. */
  readonly answer: (id: string, answer: LoggedAnswer, machine: string | null) => void
  /** An answer to a clip that was missed before; it does not count again. */
  readonly answerAgain: (id: string, answer: LoggedAnswer) => void
}

export interface BrokenSet {
  readonly kept: KeptSet
  readonly why: string
}

/** A set that is to be made, and what was left out of it. */
export interface GatheredSet {
  readonly set: Omit<PracticeSet, 'id'>
  readonly leftOut: readonly Keyed[]
}

const digest = (bytes: Uint8Array) => digestOf(bytes.slice().buffer)

/** The sets of this device. */
export function useSets(): Sets {
  const { database } = useApp()
  const [sets, setSets] = useState<readonly OpenedSet[]>([])
  const [broken, setBroken] = useState<readonly BrokenSet[]>([])
  const [said, setSaid] = useState<Sets['said']>(null)
  const [working, setWorking] = useState(false)
  const read = useCallback(async () => {
    const all = await openAll(await loadSets(database))
    setSets(all.opened)
    setBroken(all.broken)
  }, [database])
  useEffect(() => void read(), [read])
  const run = (work: () => Promise<Done | null>) => {
    setSaid(null)
    setWorking(true)
    work()
      .then(
        async (done) => {
          await read()
          setSaid(done && { severity: 'good', more: [], ...done })
        },
        (error: unknown) => setSaid({ severity: 'wrong', ...wrongWords(error) }),
      )
      .finally(() => setWorking(false))
  }
  const keepNew = async (id: string, name: string, zip: Blob) => {
    const before = sets.find(({ kept }) => kept.id === id)?.kept
    await keepSet(database, before ?? { id, name, zip, answers: [], scores: [] })
    return { words: { key: 'practice_set_opened', values: { name } } }
  }
  const keepLog = (id: string, change: (kept: KeptSet) => KeptSet) => {
    const next = change(sets.find(({ set }) => set.id === id)!.kept)
    setSets((before) => before.map((each) => (each.set.id === id ? { ...each, kept: next } : each)))
    keepSet(database, next).catch((error: unknown) => setSaid({ severity: 'wrong', ...wrongWords(error) }))
  }
  return {
    sets,
    broken,
    said,
    working,
    make: (gather) =>
      run(async () => {
        const { set, leftOut } = await gather()
        const { id, zip } = await packSet(set, digest)
        return { ...(await keepNew(id, set.name, new Blob([zip as Uint8Array<ArrayBuffer>]))), more: leftOut }
      }),
    open: (file) =>
      run(async () => {
        if (!/\.json$/i.test(file.name)) {
          const { id, name } = await openSet(sourceOf(file), file.name, digest)
          return keepNew(id, name, file.slice())
        }
        const bytes = new Uint8Array(await file.arrayBuffer())
        const scores = readScores(
          bytes,
          file.name,
          sets.map(({ set }) => set),
        )
        const { kept } = sets.find(({ set }) => set.id === scores.setId)!
        const isKnown = kept.scores.some((each) => writeScores(each) === writeScores(scores))
        if (!isKnown) await keepSet(database, { ...kept, scores: [...kept.scores, scores] })
        return { words: { key: 'practice_scores_kept', values: { by: scores.by === '' ? '?' : scores.by } } }
      }),
    drop: (id) =>
      run(async () => {
        await dropSet(database, id)
        return null
      }),
    answer: (id, answer, machine) =>
      keepLog(id, (kept) => ({
        ...kept,
        answers: [...kept.answers, answer],
        machine: [...(kept.machine ?? []), ...(machine === null ? [] : [{ clip: answer.clip, said: machine }])],
      })),
    answerAgain: (id, answer) =>
      keepLog(id, (kept) => ({
        ...kept,
        repeats: [...(kept.repeats ?? []), { ...answer, after: kept.answers.length }],
      })),
  }
}

interface Done {
  readonly words: Keyed
  readonly more?: readonly Keyed[]
}

/** One that cannot be opened is told of, and stays where it is until somebody takes it out. */
async function openAll(
  kept: readonly KeptSet[],
): Promise<{ readonly opened: readonly OpenedSet[]; readonly broken: readonly BrokenSet[] }> {
  const opened: OpenedSet[] = []
  const broken: BrokenSet[] = []
  for (const each of kept) {
    try {
      opened.push({ kept: each, set: await openSet(sourceOf(each.zip), each.name, digest) })
    } catch (error) {
      broken.push({ kept: each, why: error instanceof Error ? error.message : String(error) })
    }
  }
  return { opened, broken }
}

function sourceOf(blob: Blob) {
  return {
    size: blob.size,
    read: async (from: number, to: number) => new Uint8Array(await blob.slice(from, to).arrayBuffer()),
  }
}

/** Trouble that has its words already, and what else is to be told. */
export class SetTrouble extends Error {
  constructor(
    readonly words: Keyed,
    readonly more: readonly Keyed[] = [],
  ) {
    super(words.key)
  }
}

function wrongWords(error: unknown): { readonly words: Keyed; readonly more: readonly Keyed[] } {
  if (error instanceof SetTrouble) return { words: error.words, more: error.more }
  if (error instanceof FormatError) return { words: { key: 'file_wrong', values: { why: error.message } }, more: [] }
  if (isFull(error)) return { words: { key: 'device_full', values: {} }, more: [] }
  const why = error instanceof Error ? error.message : String(error)
  return { words: { key: 'practice_set_failed', values: { why } }, more: [] }
}
