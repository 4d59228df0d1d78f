import type { PressureTest } from '../../../../shared/job/pressureTests'
import { heldReadings } from '../../../../shared/pressure/heldReadings'
import { formatNumber } from '../../../../shared/words/formatQuantity'
import { useSay } from '../../frame/useSay'

const [WIDTH, HEIGHT] = [640, 150]
const [LEFT, RIGHT, TOP, BOTTOM] = [70, 630, 12, 116]

/** Readings against time, as they were read: each a stroke one step of the gauge high, since that is all it says. */
export function ProofCurve({ test }: { readonly test: PressureTest }) {
  const { say } = useSay()
  const held = heldReadings(test)
  const first = held[0]
  const last = held.at(-1)
  if (first === undefined || last === undefined || last.timeS === first.timeS) return null
  const values = held.map(({ value }) => value)
  const middle = (Math.min(...values) + Math.max(...values)) / 2
  // Never less than six steps of the gauge: a needle that stays should look as if it stayed.
  const half = Math.max(3 * test.resolution, (Math.max(...values) - Math.min(...values)) / 2 + test.resolution)
  const x = (timeS: number) => LEFT + ((timeS - first.timeS) / (last.timeS - first.timeS)) * (RIGHT - LEFT)
  const y = (value: number) => TOP + ((middle + half - value) / (2 * half)) * (BOTTOM - TOP)
  const decimals = Math.min(4, /\.(\d+)$/.exec(String(test.resolution))?.[1]?.length ?? 0)
  const text = (value: number) => formatNumber(value, decimals)
  return (
    <svg className="report-curve" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path d={`M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`} className="report-axis" />
      <text x={LEFT - 8} y={y(first.value) + 5} textAnchor="end">
        {text(first.value)}
      </text>
      {Math.abs(y(last.value) - y(first.value)) > 18 && (
        <text x={LEFT - 8} y={y(last.value) + 5} textAnchor="end">
          {text(last.value)}
        </text>
      )}
      <text x={LEFT} y={HEIGHT - 8}>
        {say('label_minutes', { passed_min: 0 })}
      </text>
      <text x={RIGHT} y={HEIGHT - 8} textAnchor="end">
        {say('label_minutes', { passed_min: (last.timeS - first.timeS) / 60 })}
      </text>
      {held.map(({ id, timeS, value }) => (
        <path
          key={id}
          className="report-reading"
          d={`M${x(timeS).toFixed(1)} ${y(value + test.resolution / 2).toFixed(1)}V${y(value - test.resolution / 2).toFixed(1)}`}
        />
      ))}
    </svg>
  )
}
