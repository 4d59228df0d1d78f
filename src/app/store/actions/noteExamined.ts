import type { Action } from '../action'
import { withSession } from '../changes'

/** What somebody did with a point before they may confirm: looked at its spectrum, or played a clip of it. */
export interface Examined {
  readonly lineId: string
  readonly point: number
  readonly how: 'looked' | 'played'
}

/** Remembers that the spectrum of a point was opened, or a clip of it played, until the page is left. */
export const noteExamined: Action<Examined> = {
  name: 'noteExamined',
  words: 'do_choose_point',
  shortcut: null,
  scope: 'session',
  perform: (state, { lineId, point, how }) => {
    const { examined } = state.session
    const of = examined[lineId] ?? { looked: [], played: [] }
    if (of[how].includes(point)) return state
    return withSession(state, { examined: { ...examined, [lineId]: { ...of, [how]: [...of[how], point] } } })
  },
}
