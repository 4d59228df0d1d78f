import { useEffect, useRef, useState } from 'react'
import type { PressureTest } from '../../../../shared/job/pressureTests'
import type { HoldJudgement } from '../../../../shared/pressure/judgeHold'
import type { KnownPipe } from '../../../../shared/pressure/temperatureEffect'
import { useApp } from '../../frame/useApp'

/** A judgement, and the test it is of. */
export interface Judged {
  readonly test: PressureTest
  readonly judgement: HoldJudgement
}

/**
 * What the judge says of a test. The worker judges, one test at a time, and of those that came in the meantime the last.
 *
 * @returns `null` until the first came; the one before while the next is worked out.
 */
export function useJudgement(test: PressureTest, pipe: KnownPipe): Judged | null {
  const { analyst } = useApp()
  const [judged, setJudged] = useState<Judged | null>(null)
  const [fault, setFault] = useState<Error | null>(null)
  const wanted = useRef<{ readonly test: PressureTest; readonly pipe: KnownPipe } | null>(null)
  const isBusy = useRef(false)
  useEffect(() => {
    wanted.current = { test, pipe }
    const judgeAll = async () => {
      if (isBusy.current) return
      isBusy.current = true
      try {
        while (wanted.current !== null) {
          const input = wanted.current
          const judgement = await analyst.call('judgeHold', input)
          if (wanted.current !== null) setJudged({ test: input.test, judgement })
          if (wanted.current === input) wanted.current = null
        }
      } catch (error) {
        setFault(error instanceof Error ? error : new Error(String(error)))
      } finally {
        isBusy.current = false
      }
    }
    void judgeAll()
  }, [analyst, test, pipe])
  useEffect(
    () => () => {
      wanted.current = null
    },
    [],
  )
  if (fault !== null) throw fault // the screen's guard shows it
  return judged?.test.id === test.id ? judged : null
}
