import type { JobLine } from '../../shared/job/job'
import type { Recording } from '../../shared/job/recording'
import { readLineJson } from '../../shared/line/readLineJson'

/** A recording nothing can be said against. */
export const RECORDING: Recording = {
  device: 'Spike, USB',
  sampleRateHz: 48_000,
  channelCount: 1,
  keptBits: 16,
  settings: {
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
    sampleRateHz: 48_000,
    sampleSizeBits: 16,
    channelCount: 1,
  },
  wantedS: 10,
  endedBy: null,
}

/** A line of ten metres without a sweep. */
export const FIRST_LINE: JobLine = {
  id: 'line',
  name: 'Line 1',
  line: readLineJson({ length_m: 10 }, 'line.json').line,
  problems: [],
  sweeps: [],
  confirmations: [],
}
