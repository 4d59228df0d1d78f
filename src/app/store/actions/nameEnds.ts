import type { Action } from '../action'
import { withSite } from '../changes'

/** Says what the line begins or ends at. */
export const nameEnds: Action<{
  readonly lineId: string
  readonly end: 'startName' | 'endName'
  readonly name: string
}> = {
  name: 'nameEnds',
  words: 'do_name_ends',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, end, name }) => withSite(state, lineId, { [end]: name }),
  mergeKey: ({ lineId, end }) => `${lineId} ${end}`,
}
