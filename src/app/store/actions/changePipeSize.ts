import type { Action } from '../action'
import { withLine } from '../changes'

/** The pipe's nominal size, inches; null when not told. */
export const changePipeSize: Action<{ readonly lineId: string; readonly nominalIn: number | null }> = {
  name: 'changePipeSize',
  words: 'do_change_pipe',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, nominalIn }) =>
    withLine(state, lineId, (line) => {
      const pipe = { ...(line.line.pipe ?? { material: 'pvc' as const }), nominalIn }
      return { ...line, line: { ...line.line, pipe } }
    }),
}
