import { useEffect, useState } from 'react'
import type { ClipReading } from '../analysis/clipReader'

/**
 * What was read of some clips, by their id: all together, so that they are shown at one time. Nothing before.
 *
 * @param read Must stay the same function for the same reader.
 */
export function useReadings<Clip extends { readonly id: string }, Value>(
  clips: readonly Clip[],
  read: (clip: Clip) => Promise<ClipReading<Value>>,
): ReadonlyMap<string, ClipReading<Value>> {
  const [readings, setReadings] = useState<ReadonlyMap<string, ClipReading<Value>>>(new Map())
  const [fault, setFault] = useState<{ readonly error: unknown } | null>(null)
  const ids = clips.map(({ id }) => id).join('\n')
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ids say which clips they are
  useEffect(() => {
    let isCurrent = true
    const all = Promise.all(clips.map(async (clip) => [clip.id, await read(clip)] as const))
    all.then(
      (read) => isCurrent && setReadings(new Map(read)),
      (error) => isCurrent && setFault({ error }),
    )
    return () => {
      isCurrent = false
    }
  }, [ids, read])
  if (fault !== null) throw fault.error
  return readings
}
