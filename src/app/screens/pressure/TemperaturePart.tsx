import type { PressureTest } from '../../../../shared/job/pressureTests'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { changePressureTest } from '../../store/actions/changePressureTest'
import type { TestPartProps } from './pressurePart'

/** The water at both ends of the hold: warmth moves the gauge as a leak does. */
export function TemperaturePart({ line, test, disabled }: TestPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const put = (change: Partial<PressureTest>) =>
    store.dispatch(changePressureTest, { lineId: line.id, testId: test.id, change })
  const field = { unit: '', optional: true, least: -10, most: 90, disabled, onDone: store.closeStep }
  return (
    <Panel heading={say('heading_temperature')}>
      <div className="pressure-pair">
        <NumberField
          {...field}
          label={say('label_temperature_start')}
          value={test.startTemperatureC}
          onChange={(startTemperatureC) => put({ startTemperatureC })}
        />
        <NumberField
          {...field}
          label={say('label_temperature_end')}
          value={test.endTemperatureC}
          onChange={(endTemperatureC) => put({ endTemperatureC })}
        />
      </div>
    </Panel>
  )
}
