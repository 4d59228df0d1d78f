import { useSyncExternalStore } from 'react'
import { useApp } from '../../frame/useApp'
import type { Recorder } from '../../record/recorder'
import { recorderOf } from '../../record/recorderOf'
import type { RecorderState } from '../../record/recorderState'

export function useRecorder(): Recorder {
  return recorderOf(useApp())
}

/**
 * Part of what the recorder shows; renders again when it changes.
 *
 * @param select Must give the same object for the same state: no new lists or objects.
 */
export function useRecorderState<Part>(select: (state: RecorderState) => Part): Part {
  const recorder = useRecorder()
  return useSyncExternalStore(recorder.subscribe, () => select(recorder.get()))
}
