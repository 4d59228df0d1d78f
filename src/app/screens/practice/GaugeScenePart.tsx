import type { GaugeScene } from '../../../../shared/practice/drills/question'
import { formatNumber } from '../../../../shared/words/formatQuantity'
import { useSay } from '../../frame/useSay'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Table } from '../../look/widgets/Table'

const [WIDTH, HEIGHT] = [320, 170]
const [LEFT, RIGHT, TOP, BOTTOM] = [56, 312, 10, 136]
/** The axis never magnifies less than so many steps of the gauge: what stays should look as if it stayed. */
const LEAST_STEPS = 10

/** A hold test with all that was tried beside it. */
export function GaugeScenePart({ gauge }: { readonly gauge: GaugeScene }) {
  const { say } = useSay('kPa')
  const { test, letOutMl, fullLineKpa, thisLineKpa } = gauge
  const degrees = (celsius: number | null) => formatNumber(celsius ?? 0, 1)
  return (
    <div className="stack">
      <GaugeCurve test={test} />
      <Disclosure summary={say('heading_readings')}>
        <Table
          caption={say('heading_readings')}
          captionUnseen
          columns={[
            { heading: say('label_reading_time') },
            { heading: say('label_reading_value', { unit: 'kPa' }), align: 'number' },
          ]}
          rows={test.readings.map(({ id, timeS, value }) => ({
            key: id,
            cells: [formatNumber(timeS, 0), formatNumber(value, 1)],
          }))}
        />
      </Disclosure>
      <section className="stack-small" aria-label={say('heading_tried')}>
        <h3>{say('heading_tried')}</h3>
        <ul className="practice-tried">
          <li>
            {say('gauge_temperature', { start: degrees(test.startTemperatureC), end: degrees(test.endTemperatureC) })}
          </li>
          {test.fittings.map(({ id, name, state }) => (
            <li key={id}>
              {state === 'weeping' ? say('gauge_dye_drawn', { name }) : say('gauge_dye_still', { name })}
            </li>
          ))}
          <li>{say('gauge_let_out', { out_ml: letOutMl, this_fine_kpa: thisLineKpa, full_fine_kpa: fullLineKpa })}</li>
        </ul>
        <p className="soft">
          {say('practice_read_first')} <span className="practice-keys">{say('practice_keys')}</span>
        </p>
      </section>
    </div>
  )
}

/** Readings against time: each a stroke one step of the gauge high, since that is all it says. */
function GaugeCurve({ test }: Pick<GaugeScene, 'test'>) {
  const { say } = useSay('kPa')
  const values = test.readings.map(({ value }) => value)
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const half = Math.max((LEAST_STEPS * test.resolution) / 2, (high - low) / 2 + test.resolution)
  const middle = (low + high) / 2
  const endS = test.readings.at(-1)!.timeS
  const x = (timeS: number) => LEFT + 6 + (timeS / endS) * (RIGHT - LEFT - 12)
  const y = (value: number) => TOP + ((middle + half - value) / (2 * half)) * (BOTTOM - TOP)
  return (
    <svg className="practice-curve" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path d={`M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`} className="practice-axis" />
      {[middle + half * 0.8, middle, middle - half * 0.8].map((value) => (
        <text key={value} x={LEFT - 6} y={y(value) + 5} textAnchor="end">
          {formatNumber(value, 1)}
        </text>
      ))}
      <text x={LEFT} y={HEIGHT - 12}>
        0
      </text>
      <text x={RIGHT} y={HEIGHT - 12} textAnchor="end">
        {say('label_hold_minutes', { min: endS / 60 })}
      </text>
      {test.readings.map(({ id, timeS, value }) => (
        <path
          key={id}
          className="practice-reading"
          d={`M${x(timeS).toFixed(1)} ${y(value + test.resolution / 2).toFixed(1)}V${y(value - test.resolution / 2).toFixed(1)}`}
        />
      ))}
    </svg>
  )
}
