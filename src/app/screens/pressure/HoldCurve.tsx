import type { PressureTest } from '../../../../shared/job/pressureTests'
import { curveScale } from '../../../../shared/pressure/curveScale'
import { heldReadings } from '../../../../shared/pressure/heldReadings'
import type { HoldJudgement } from '../../../../shared/pressure/judgeHold'
import { KPA_PER } from '../../../../shared/pressure/pressureUnit'
import { useSay } from '../../frame/useSay'
import { useWidthPx } from '../../sketch/useWidthPx'
import { gaugeText } from './pressurePart'

const HEIGHT_PX = 240

interface HoldCurveProps {
  readonly test: PressureTest
  readonly judgement: HoldJudgement
}

/**
 * What was read against time, with the band the needle was in. A reading is a solid stroke one step of the gauge high,
 * since that is all it says; the band is inferred and hatched.
 */
export function HoldCurve({ test, judgement }: HoldCurveProps) {
  return heldReadings(test).length < 2 ? null : <CurveFigure test={test} judgement={judgement} />
}

function CurveFigure({ test, judgement }: HoldCurveProps) {
  const { say } = useSay(test.unit)
  const { ref, widthPx } = useWidthPx()
  const held = heldReadings(test)
  const first = held[0]
  const last = held.at(-1)
  if (first === undefined || last === undefined) return null
  const perUnit = KPA_PER[test.unit]
  const label = say('label_curve', {
    held_min: (last.timeS - first.timeS) / 60,
    count: held.length,
    first_fine_kpa: first.value * perUnit,
    last_fine_kpa: last.value * perUnit,
  })
  return (
    <figure className="curve">
      <div ref={ref} className="curve-frame">
        {widthPx > 0 && <CurvePicture test={test} judgement={judgement} widthPx={widthPx} label={label} />}
      </div>
      <figcaption className="curve-key">
        <span>
          <svg width="14" height="20" aria-hidden="true">
            <path d="M7 3v14" className="curve-read" />
          </svg>
          {say('label_curve_key_read')}
        </span>
        {judgement.fit !== null && (
          <span>
            <svg width="28" height="20" aria-hidden="true">
              <rect x="1" y="3" width="26" height="14" className="curve-band" fill="url(#curve-hatch)" />
            </svg>
            {say('label_curve_key_band')}
          </span>
        )}
      </figcaption>
    </figure>
  )
}

interface CurvePictureProps extends HoldCurveProps {
  readonly widthPx: number
  readonly label: string
}

function CurvePicture({ test, judgement, widthPx, label }: CurvePictureProps) {
  const { say } = useSay()
  const held = heldReadings(test)
  const perUnit = KPA_PER[test.unit]
  const band = (judgement.fit?.band ?? []).map(({ timeS, kpa, lowKpa, highKpa }) => ({
    timeS,
    value: kpa / perUnit,
    low: lowKpa / perUnit,
    high: highKpa / perUnit,
  }))
  const scale = curveScale({
    readings: held,
    band,
    resolution: test.resolution,
    leastHoldS: test.rules.leastHoldS,
    widthPx,
    heightPx: HEIGHT_PX,
  })
  const { x, y, times, values, left, bottom, right, top } = scale
  const edge = (points: readonly { readonly timeS: number; readonly at: number }[]) =>
    points.map(({ timeS, at }) => `${x(timeS).toFixed(1)},${y(at).toFixed(1)}`)
  const outline = [
    ...edge(band.map(({ timeS, high }) => ({ timeS, at: high }))),
    ...edge(band.map(({ timeS, low }) => ({ timeS, at: low })).reverse()),
  ]
  return (
    <svg width={widthPx} height={HEIGHT_PX} role="img" aria-label={label}>
      <defs>
        <pattern id="curve-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0v7" className="curve-hatch" />
        </pattern>
      </defs>
      {values.map((value) => (
        <g key={value}>
          <path d={`M${left} ${y(value)}H${right}`} className="curve-rule" />
          <text x={left - 8} y={y(value) + 5} textAnchor="end" className="curve-text">
            {gaugeText(value, scale.valueStep)}
          </text>
        </g>
      ))}
      {times.map((timeS) => (
        <text key={timeS} x={x(timeS)} y={HEIGHT_PX - 6} textAnchor="middle" className="curve-text">
          {timeS / 60}
        </text>
      ))}
      <text x={right} y={HEIGHT_PX - 6} textAnchor="end" className="curve-text">
        {say('label_curve_minutes')}
      </text>
      <path d={`M${left} ${bottom}H${right}`} className="curve-axis" />
      <path d={`M${x(test.rules.leastHoldS)} ${top}V${bottom}`} className="curve-asked" />
      <text x={x(test.rules.leastHoldS) - 6} y={top + 14} textAnchor="end" className="curve-text">
        {say('label_curve_asked')}
      </text>
      {band.length > 0 && <polygon points={outline.join(' ')} className="curve-band" fill="url(#curve-hatch)" />}
      {band.length > 0 && (
        <polyline
          points={edge(band.map(({ timeS, value }) => ({ timeS, at: value }))).join(' ')}
          className="curve-fit"
        />
      )}
      {held.map(({ id, timeS, value }) => (
        <path
          key={id}
          d={`M${x(timeS).toFixed(1)} ${y(value + test.resolution / 2).toFixed(1)}V${y(value - test.resolution / 2).toFixed(1)}`}
          className="curve-read"
        />
      ))}
    </svg>
  )
}
