import type { GaugeReading } from '../../../../shared/pressure/gaugeLog'
import type { Action } from '../action'
import { withPressureTest } from '../changes'

/** Keeps a reading of the gauge; the first one of a clock starts it. */
export const addReading: Action<{
  readonly lineId: string
  readonly testId: string
  readonly reading: GaugeReading
  /** Only where the reading starts the clock, s since 1970. */
  readonly clockStartS?: number
}> = {
  name: 'addReading',
  words: 'do_add_reading',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, testId, reading, clockStartS }) =>
    withPressureTest(state, { lineId, testId }, (test) => ({
      ...test,
      readings: [...test.readings, reading],
      ...(clockStartS !== undefined && { clockStartS }),
    })),
}
