import { ASSUMED_DEPTH_M } from '../../../../shared/line/line'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Choice } from '../../look/widgets/Choice'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { changeDepth } from '../../store/actions/changeDepth'
import { changeInlet } from '../../store/actions/changeInlet'
import { changeRoute } from '../../store/actions/changeRoute'
import { ALONG_LIMITS, DEPTH_LIMITS, type LinePartProps } from './linePart'

/** How deep, where the air comes in, and how sure the route is. */
export function PipePart({ lineId, line, disabled, onDone }: LinePartProps) {
  const { say } = useSay()
  const { store } = useApp()
  return (
    <Panel heading={say('heading_pipe')}>
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
      <RouteFields lineId={lineId} line={line} disabled={disabled} onDone={onDone} />
    </Panel>
  )
}

/** What a way of knowing the route is usually worth, standard deviation across the line, m. Chosen. */
const ROUTE_SD_M = { traced: 0.1, drawing: 0.3, paced: 0.5 } as const

function RouteFields({ lineId, line, disabled, onDone }: LinePartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const { routeSdM } = line
  const put = (next: number | null) => store.dispatch(changeRoute, { lineId, routeSdM: next })
  const known = (['traced', 'drawing', 'paced'] as const).find((way) => ROUTE_SD_M[way] === routeSdM)
  return (
    <>
      <Choice
        label={say('heading_route')}
        value={routeSdM === null ? 'unsaid' : (known ?? null)}
        options={[
          { value: 'traced', words: say('label_route_traced') },
          { value: 'drawing', words: say('label_route_drawing') },
          { value: 'paced', words: say('label_route_paced') },
          { value: 'unsaid', words: say('label_route_unsaid') },
        ]}
        disabled={disabled}
        onChange={(way) => {
          put(way === 'unsaid' ? null : ROUTE_SD_M[way])
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
          disabled={disabled}
          onChange={put}
          onDone={onDone}
        />
      )}
    </>
  )
}
