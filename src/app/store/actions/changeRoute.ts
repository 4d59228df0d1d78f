import { BARE_SITE, type RouteWay } from '../../../../shared/job/site'
import type { Line } from '../../../../shared/line/line'
import type { Action } from '../action'
import { withLine } from '../changes'

/** How sure the route is, null when not told; and how it is known. */
export const changeRoute: Action<{
  readonly lineId: string
  readonly routeSdM: Line['routeSdM']
  readonly routeWay: RouteWay | null
}> = {
  name: 'changeRoute',
  words: 'do_change_route',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, routeSdM, routeWay }) =>
    withLine(state, lineId, (line) => {
      const site = line.site ?? BARE_SITE
      const isSure = line.line.routeSdM === routeSdM
      if (isSure && site.routeWay === routeWay) return line
      return {
        ...line,
        line: isSure ? line.line : { ...line.line, routeSdM },
        site: { ...site, routeWay },
      }
    }),
  mergeKey: ({ lineId }) => lineId,
}
