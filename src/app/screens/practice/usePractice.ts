import { useCallback, useEffect, useState } from 'react'
import type { PracticeAnswer } from '../../../../shared/practice/answers'
import type { Drill } from '../../../../shared/practice/drills/question'
import { useApp } from '../../frame/useApp'
import {
  type KeptPractice,
  keepAnswer,
  keepDryJob,
  keepRound,
  loadPractice,
  type PracticeRound,
} from '../../storage/practice'

export interface Practice extends KeptPractice {
  /** The last answer could not be kept. */
  readonly notKept: boolean
  readonly start: (drill: Drill) => void
  readonly answer: (answer: PracticeAnswer) => void
  readonly next: () => void
  readonly end: () => void
  readonly dryRun: (jobId: string) => void
}

/** What was practised on this device; `null` until it was read. Every step is kept as it is made. */
export function usePractice(): Practice | null {
  const { database } = useApp()
  const [kept, setKept] = useState<KeptPractice | null>(null)
  const [notKept, setNotKept] = useState(false)
  useEffect(() => void loadPractice(database).then(setKept), [database])
  const keep = useCallback((work: Promise<void>) => {
    work.then(
      () => setNotKept(false),
      () => setNotKept(true),
    )
  }, [])
  if (kept === null) return null
  const put = (round: PracticeRound | null, more: Partial<KeptPractice> = {}) => {
    setKept({ ...kept, ...more, round })
    keep(keepRound(database, round))
  }
  return {
    ...kept,
    notKept,
    start: (drill) => put({ drill, from: kept.answers.length, answered: false }),
    answer: (answer) => {
      if (kept.round === null) return
      keep(keepAnswer(database, answer))
      put({ ...kept.round, answered: true }, { answers: [...kept.answers, answer] })
    },
    next: () => kept.round && put({ ...kept.round, answered: false }),
    end: () => put(null),
    dryRun: (jobId) => {
      setKept({ ...kept, dryJobId: jobId })
      keep(keepDryJob(database, jobId))
    },
  }
}
