import { useEffect, useState } from 'react'
import type { Job } from '../../../shared/job/job'
import { readJob } from '../../../shared/job/readJob'
import { type WindowScore, windowScore } from '../../../shared/job/windowScore'
import { useApp, useAppState } from '../frame/useApp'

/** How the windows did over all jobs on this device, the open one as it is now; `null` until the others were read. */
export function useWindowScore(): WindowScore | null {
  const { database } = useApp()
  const job = useAppState((state) => state.job)
  const [others, setOthers] = useState<readonly Job[] | null>(null)
  const openId = job?.id ?? null
  useEffect(() => {
    let isGone = false
    const read = async () => {
      const kept = await database.getAll('jobs')
      if (isGone) return
      setOthers(kept.flatMap(({ id, json, summary }) => (id === openId ? [] : readable(json, summary.name))))
    }
    read().catch(() => undefined) // the score is left out
    return () => {
      isGone = true
    }
  }, [database, openId])
  return job === null || others === null ? null : windowScore([...others, job])
}

/** A job that this version cannot read has no say. */
function readable(json: unknown, name: string): Job[] {
  try {
    return [readJob(json, name)]
  } catch {
    return []
  }
}
