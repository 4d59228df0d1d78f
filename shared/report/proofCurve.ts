import type { PressureTest } from '../job/pressureTests'
import { curveScale } from '../pressure/curveScale'
import { heldReadings } from '../pressure/heldReadings'
import { KPA_PER } from '../pressure/pressureUnit'
import { formatNumber } from '../words/formatQuantity'
import { sentence } from '../words/sentence'
import { METRIC } from '../words/shownUnits'
import type { Picture, Shape } from './picture'

/** As small as it is printed three beside each other, with letters that can still be read. */
const [WIDTH_PX, HEIGHT_PX] = [340, 135]

/**
 * What was read against time: each reading a stroke one step of the gauge high, since that is all it says, over the band
 * as the judge gave it when the test was closed.
 *
 * @returns `null` with fewer than two readings of the hold. A test of an older version, or an open one, has no band.
 */
export function proofCurve(test: PressureTest): Picture | null {
  const held = heldReadings(test)
  const [first, last] = [held[0], held.at(-1)]
  if (first === undefined || last === undefined || last.timeS === first.timeS) return null
  const perUnit = KPA_PER[test.unit]
  const band = (test.kept?.judged?.band ?? []).map(({ timeS, kpa, lowKpa, highKpa }) => ({
    timeS,
    value: kpa / perUnit,
    low: lowKpa / perUnit,
    high: highKpa / perUnit,
  }))
  const { resolution, rules } = test
  const scale = curveScale({
    readings: held,
    band,
    resolution,
    leastHoldS: rules.leastHoldS,
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
  })
  const { x, y, times, values, valueStep, left, right, top, bottom } = scale
  const at = (timeS: number, value: number) => `${x(timeS).toFixed(1)} ${y(value).toFixed(1)}`
  const line = (points: readonly { readonly timeS: number; readonly value: number }[]) =>
    points.map(({ timeS, value }, i) => `${i === 0 ? 'M' : 'L'}${at(timeS, value)}`).join('')
  const outline = [
    ...band.map(({ timeS, high }) => ({ timeS, value: high })),
    ...band.map(({ timeS, low }) => ({ timeS, value: low })).reverse(),
  ]
  const strokes = held.map(
    ({ timeS, value }) => `M${at(timeS, value + resolution / 2)}L${at(timeS, value - resolution / 2)}`,
  )
  const path = (d: string, look: Extract<Shape, { kind: 'path' }>['look']): Shape => ({ kind: 'path', d, look })
  const asked = rules.leastHoldS
  return {
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
    label: sentence(
      'label_curve',
      {
        held_min: (last.timeS - first.timeS) / 60,
        count: held.length,
        first_fine_kpa: first.value * perUnit,
        last_fine_kpa: last.value * perUnit,
      },
      { ...METRIC, pressure: test.unit },
    ),
    shapes: [
      ...values.map((value) => path(`M${left} ${y(value).toFixed(1)}H${right}`, 'rule')),
      ...(band.length > 0 ? [path(`${line(outline)}Z`, 'band'), path(line(band), 'fit')] : []),
      path(`M${left} ${top}V${bottom}H${right}`, 'axis'),
      path(`M${x(asked).toFixed(1)} ${top}V${bottom}`, 'asked'),
      path(strokes.join(''), 'reading'),
      ...values.map(
        (value): Shape => ({
          kind: 'text',
          x: left - 8,
          y: y(value) + 5,
          anchor: 'end',
          text: formatNumber(value, decimalsOf(valueStep)),
        }),
      ),
      ...times.map(
        (timeS): Shape => ({
          kind: 'text',
          x: x(timeS),
          y: HEIGHT_PX - 6,
          anchor: 'middle',
          text: formatNumber(timeS / 60, 0),
        }),
      ),
      { kind: 'text', x: right, y: HEIGHT_PX - 6, anchor: 'end', text: sentence('label_curve_minutes', {}) },
      { kind: 'text', x: x(asked) - 6, y: top + 14, anchor: 'end', text: sentence('label_curve_asked', {}) },
      { kind: 'text', x: left + 8, y: bottom - 8, anchor: 'start', text: test.unit },
    ],
  }
}

function decimalsOf(step: number): number {
  return Math.min(6, /\.(\d+)$/.exec(String(step))?.[1]?.length ?? 0)
}
