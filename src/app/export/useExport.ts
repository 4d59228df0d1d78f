import { useEffect, useRef, useState } from 'react'
import { isAborted } from '../analysis/analyst'
import { useApp } from '../frame/useApp'
import { saveFile } from '../saveFile'
import { tell, untell } from '../store/notices'
import type { NoticePlace } from '../store/state'
import type { PackedSweepFolder, Packing } from './packSweepFolder'

/** Packs something; `null` where there is nothing to pack. */
export type Pack = (packing: Packing) => Promise<PackedSweepFolder | null>

export interface Export {
  /** `null` while nothing is being packed. */
  readonly progress: { readonly done: number; readonly total: number } | null
  readonly start: (pack: Pack) => void
  readonly cancel: () => void
}

/**
 * Packs a folder and hands it to whoever uses the page.
 *
 * @param place Where what is odd or went wrong is told.
 */
export function useExport(place: NoticePlace): Export {
  const { store, analyst, database } = useApp()
  const running = useRef<AbortController | null>(null)
  const [progress, setProgress] = useState<Export['progress']>(null)
  useEffect(() => () => running.current?.abort(), [])

  const run = async (pack: Pack, signal: AbortSignal) => {
    try {
      const onDone = (done: number, total: number) => setProgress({ done, total })
      const packed = await pack({ database, analyst, signal, onDone })
      if (packed === null) return
      saveFile(`${packed.name}.zip`, packed.zip, 'application/zip')
      const { lostCount: lost, notWavCount: clips } = packed
      if (lost > 0) store.update((state) => tell(state, place, 'odd', { key: 'export_lost', values: { lost } }))
      if (clips > 0) store.update((state) => tell(state, place, 'odd', { key: 'export_not_wav', values: { clips } }))
    } catch (error) {
      if (isAborted(error)) return
      const why = error instanceof Error ? error.message : String(error)
      store.update((state) => tell(state, place, 'wrong', { key: 'export_failed', values: { why } }))
    } finally {
      if (!signal.aborted) setProgress(null)
    }
  }

  const cancel = () => {
    running.current?.abort()
    setProgress(null)
  }
  const start = (pack: Pack) => {
    running.current?.abort()
    running.current = new AbortController()
    store.update((state) => untell(state, place))
    setProgress({ done: 0, total: 0 })
    void run(pack, running.current.signal)
  }
  return { progress, start, cancel }
}
