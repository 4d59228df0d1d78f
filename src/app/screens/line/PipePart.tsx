import { ROUTE_WAYS, type RouteWay } from '../../../../shared/job/site'
import { ASSUMED_DEPTH_M } from '../../../../shared/line/line'
import { useApp } from '../../frame/useApp'
import { type Say, useSay } from '../../frame/useSay'
import { Choice } from '../../look/widgets/Choice'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { PipeSizeField } from '../../pipe/PipeSizeField'
import { changeDepth } from '../../store/actions/changeDepth'
import { changeInlet } from '../../store/actions/changeInlet'
import { changeRoute } from '../../store/actions/changeRoute'
import { ALONG_LIMITS, DEPTH_LIMITS, type LinePartProps } from './linePart'

/** Which size, how deep, where the air comes in, and how sure the route is. */
export function PipePart({ lineId, line, site, disabled, onDone }: LinePartProps) {
  const { say } = useSay()
  const { store } = useApp()
  return (
    <Panel heading={say('heading_pipe')}>
      <PipeSizeField lineId={lineId} line={line} disabled={disabled} />
      <NumberField
        label={say('label_depth')}
        value={line.depthM}
        unit="m"
        optional
        {...DEPTH_LIMITS}
        hint={line.depthM === null && say('depth_assumed', { depth_m: ASSUMED_DEPTH_M })}
        disabled={disabled}
        onChange={(depthM) => store.dispatch(changeDepth, { lineId, depthM })}
        onDone={onDone}
      />
      <NumberField
        label={say('label_inlet')}
        value={line.airInletM}
        unit="m"
        optional
        {...ALONG_LIMITS}
        hint={say('inlet_hint')}
        disabled={disabled}
        onChange={(airInletM) => store.dispatch(changeInlet, { lineId, airInletM })}
        onDone={onDone}
      />
      <RouteFields lineId={lineId} line={line} site={site} disabled={disabled} onDone={onDone} />
    </Panel>
  )
}

/**
 * What a way of knowing the route is usually worth, standard deviation across the line, m. Chosen from common practice,
 * no source: traced to a pipe's breadth, drawn to a foot, paced to half a stride.
 */
const ROUTE_SD_M = { traced: 0.1, drawing: 0.3, paced: 0.5 } as const satisfies Record<RouteWay, number>

const WHY = {
  traced: 'route_why_traced',
  drawing: 'route_why_drawing',
  paced: 'route_why_paced',
} as const satisfies Record<RouteWay, string>

function RouteFields({ lineId, line, site, disabled, onDone }: LinePartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const { routeSdM } = line
  const put = (next: number | null, routeWay: RouteWay | null) =>
    store.dispatch(changeRoute, { lineId, routeSdM: next, routeWay })
  const alike = ROUTE_WAYS.find((way) => ROUTE_SD_M[way] === routeSdM) ?? null
  const way = routeSdM === null ? null : (site.routeWay ?? alike)
  return (
    <>
      <Choice
        label={say('heading_route')}
        value={routeSdM === null ? 'unsaid' : way}
        options={[
          { value: 'traced', words: say('label_route_traced') },
          { value: 'drawing', words: say('label_route_drawing') },
          { value: 'paced', words: say('label_route_paced') },
          { value: 'unsaid', words: say('label_route_unsaid') },
        ]}
        disabled={disabled}
        onChange={(next) => {
          if (next === 'unsaid') put(null, null)
          else put(ROUTE_SD_M[next], next)
          onDone()
        }}
      />
      {routeSdM !== null && (
        <NumberField
          label={say('label_route_sd')}
          value={routeSdM}
          unit="m"
          least={0}
          most={100}
          hint={way && whyOf(say, way, routeSdM)}
          disabled={disabled}
          onChange={(next) => put(next, way)}
          onDone={onDone}
        />
      )}
    </>
  )
}

/** Where the figure comes from. */
function whyOf(say: Say, way: RouteWay, routeSdM: number): string {
  const usual = say(WHY[way], { route_m: ROUTE_SD_M[way] })
  return routeSdM === ROUTE_SD_M[way] ? usual : say('route_typed', { route_m: ROUTE_SD_M[way] })
}
