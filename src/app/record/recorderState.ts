import { FIRST_RECORDING, type RecordingState } from '../../../shared/record/recordingState'
import type { Keyed } from '../../../shared/words/sentence'
import type { LastClip } from './clipKeeping'

/** What the screen shows of the recorder. Plain data, never changed in place. */
export interface RecorderState {
  readonly recording: RecordingState
  /** Name of the open microphone; `null` while none is open. */
  readonly device: string | null
  readonly deviceId: string | null
  readonly devices: readonly { readonly id: string; readonly name: string }[]
  readonly monitoring: boolean
  /** What went wrong last; `null` when nothing did since the last start. */
  readonly trouble: Keyed | null
  readonly last: LastClip | null
  /** The sweep that clips join, when it was chosen. */
  readonly sweep: string | null
  readonly freeBytes: number | null
}

export const FIRST_RECORDER_STATE: RecorderState = {
  recording: FIRST_RECORDING,
  device: null,
  deviceId: null,
  devices: [],
  monitoring: false,
  trouble: null,
  last: null,
  sweep: null,
  freeBytes: null,
}
