import { useCallback, useEffect, useState } from 'react'
import { FormatError } from '../../../../shared/base/errors'
import { openSet } from '../../../../shared/practice/set/openSet'
import { packSet } from '../../../../shared/practice/set/packSet'
import type { PracticeSet, SetAnswer } from '../../../../shared/practice/set/practiceSet'
import { readScores, writeScores } from '../../../../shared/practice/set/scoresFile'
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
  /** What was done, or went wrong; `null`: nothing to tell. */
  readonly said: { readonly severity: 'good' | 'wrong'; readonly words: Keyed } | null
  readonly working: boolean
  /** Makes a set of what is gathered, and keeps it. */
  readonly make: (gather: () => Promise<Omit<PracticeSet, 'id'>>) => void
  /** A set, or scores of one. */
  readonly open: (file: File) => void
  readonly drop: (id: string) => void
  /** An answer, and what the machine said of the same clip. */
  readonly answer: (id: string, answer: SetAnswer, machine: string | null) => void
}

const digest = (bytes: Uint8Array) => digestOf(bytes.slice().buffer)

/** The sets of this device. */
export function useSets(): Sets {
  const { database } = useApp()
  const [sets, setSets] = useState<readonly OpenedSet[]>([])
  const [said, setSaid] = useState<Sets['said']>(null)
  const [working, setWorking] = useState(false)
  const read = useCallback(async () => setSets(await openAll(await loadSets(database))), [database])
  useEffect(() => void read(), [read])
  const run = (work: () => Promise<Keyed | null>) => {
    setSaid(null)
    setWorking(true)
    work()
      .then(
        async (words) => {
          await read()
          setSaid(words && { severity: 'good', words })
        },
        (error: unknown) => setSaid({ severity: 'wrong', words: wrongWords(error) }),
      )
      .finally(() => setWorking(false))
  }
  const keepNew = async (id: string, name: string, zip: Blob) => {
    const before = sets.find(({ kept }) => kept.id === id)?.kept
    await keepSet(database, before ?? { id, name, zip, answers: [], scores: [] })
    return { key: 'practice_set_opened', values: { name } }
  }
  return {
    sets,
    said,
    working,
    make: (gather) =>
      run(async () => {
        const set = await gather()
        const { id, zip } = await packSet(set, digest)
        return keepNew(id, set.name, new Blob([zip as Uint8Array<ArrayBuffer>]))
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
        return scores.by === ''
          ? { key: 'practice_scores_kept', values: { by: '?' } }
          : { key: 'practice_scores_kept', values: { by: scores.by } }
      }),
    drop: (id) =>
      run(async () => {
        await dropSet(database, id)
        return null
      }),
    answer: (id, answer, machine) => {
      const { kept } = sets.find(({ set }) => set.id === id)!
      const next = {
        ...kept,
        answers: [...kept.answers, answer],
        machine: [...(kept.machine ?? []), ...(machine === null ? [] : [{ clip: answer.clip, said: machine }])],
      }
      setSets((before) => before.map((each) => (each.set.id === id ? { ...each, kept: next } : each)))
      keepSet(database, next).catch((error: unknown) => setSaid({ severity: 'wrong', words: wrongWords(error) }))
    },
  }
}

async function openAll(kept: readonly KeptSet[]): Promise<OpenedSet[]> {
  const opened: OpenedSet[] = []
  for (const each of kept) {
    const set = await openSet(sourceOf(each.zip), each.name, digest).catch(() => null)
    if (set !== null) opened.push({ kept: each, set })
  }
  return opened
}

function sourceOf(blob: Blob) {
  return {
    size: blob.size,
    read: async (from: number, to: number) => new Uint8Array(await blob.slice(from, to).arrayBuffer()),
  }
}

/** Trouble that has its words already. */
export class SetTrouble extends Error {
  constructor(readonly words: Keyed) {
    super(words.key)
  }
}

function wrongWords(error: unknown): Keyed {
  if (error instanceof SetTrouble) return error.words
  if (error instanceof FormatError) return { key: 'file_wrong', values: { why: error.message } }
  if (isFull(error)) return { key: 'device_full', values: {} }
  return { key: 'practice_set_failed', values: { why: error instanceof Error ? error.message : String(error) } }
}
