import { METRES_PER_FOOT, PASCALS_PER_PSI } from '../base/units'
import { METRIC, type ShownUnits } from './shownUnits'

/**
 * A number as a person reads it, with its unit. The one place where numbers become text.
 *
 * The unit is told by the end of the name, as everywhere in our files: `along_m`, `hz`, `air_kpa`, `share_percent`. A
 * rate (`ring_rate_per_s`) and a bare number have no unit; the sentence round them names it. `probability` and `share` are
 * shown in percent, and never as 0 or 100 % when they are not. Who reads in feet reads feet and inches, as on a tape:
 * a tenth of a foot would be taken for an inch.
 *
 * @param name  Name of the value.
 * @param value Finite.
 * @example formatQuantity('along_m', 5.3096) // '5.31 m'
 */
export function formatQuantity(name: string, value: number, units: ShownUnits = METRIC): string {
  const kind = kindOf(name)
  if (kind === null) return plainNumber(value)
  const { factor, unit, decimals } = kind(units)
  if (unit === 'share') return shareText(value)
  if (unit === 'ft') return feetAndInches(value)
  if (name.endsWith('band_hz')) return `${nominalBandHz(value)} Hz`
  const shown = value * factor
  const number = formatNumber(shown, typeof decimals === 'number' ? decimals : decimals(Math.abs(shown)))
  return unit === '' ? number : `${number} ${unit}`
}

/** A number with a fixed count of decimals and a point; never "-0". */
export function formatNumber(value: number, decimals: number): string {
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? text.replace('-', '') : text
}

/** Heading of a column of lengths and the factor from metres to it: decimal feet, to be reckoned with. */
export function lengthUnit(units: ShownUnits): {
  readonly unit: string
  readonly perMetre: number
  readonly decimals: number
} {
  return units.length === 'ft'
    ? { unit: 'ft', perMetre: 1 / METRES_PER_FOOT, decimals: 2 }
    : { unit: 'm', perMetre: 1, decimals: 2 }
}

interface Kind {
  readonly factor: number
  readonly unit: string
  readonly decimals: number | ((size: number) => number)
}

/** About two figures, and whole numbers from ten on. */
const figures = (size: number) => (size < 0.0995 ? 3 : size < 0.995 ? 2 : atLeast10(size))
/** A tenth of a minute where it says something. */
const minutes = (size: number) => (size < 0.095 ? 2 : size < 9.95 && Math.round(size * 10) % 10 !== 0 ? 1 : 0)
const atLeast10 = (size: number) => (size < 9.95 ? 1 : 0)

const KINDS: Readonly<Record<string, (units: ShownUnits) => Kind>> = {
  m: (units) => {
    const { unit, perMetre, decimals } = lengthUnit(units)
    return { factor: perMetre, unit, decimals }
  },
  kpa: ({ pressure }) => PRESSURES[pressure],
  fine_kpa: ({ pressure }) => ({ ...PRESSURES[pressure], decimals: FINE_DECIMALS[pressure] }),
  min: () => ({ factor: 1, unit: 'min', decimals: minutes }),
  ml: () => ({ factor: 1, unit: 'mL', decimals: figures }),
  mm: () => ({ factor: 1, unit: 'mm', decimals: figures }),
  j: () => ({ factor: 1, unit: 'J', decimals: figures }),
  hz: () => ({ factor: 1, unit: 'Hz', decimals: atLeast10 }),
  db: () => ({ factor: 1, unit: 'dB', decimals: atLeast10 }),
  dbfs: () => ({ factor: 1, unit: 'dBFS', decimals: 1 }),
  s: () => ({ factor: 1, unit: 's', decimals: (size) => (size < 0.1 ? 3 : size < 9.95 ? 1 : 0) }),
  percent: () => ({ factor: 1, unit: '%', decimals: (size) => (size < 0.095 ? 2 : atLeast10(size)) }),
  per_s: () => ({ factor: 1, unit: '', decimals: atLeast10 }),
  probability: () => SHARE,
  share: () => SHARE,
  cost: () => ({ factor: 1, unit: '', decimals: atLeast10 }),
  times: () => ({ factor: 1, unit: '', decimals: atLeast10 }),
  bubbling: () => ({ factor: 1, unit: '', decimals: 2 }),
}

const SHARE: Kind = { factor: 1, unit: 'share', decimals: 0 }

const PRESSURES: Readonly<Record<ShownUnits['pressure'], Kind>> = {
  kPa: { factor: 1, unit: 'kPa', decimals: atLeast10 },
  psi: { factor: 1000 / PASCALS_PER_PSI, unit: 'psi', decimals: 1 },
  bar: { factor: 0.01, unit: 'bar', decimals: 2 },
}

/** As finely as a gauge is read. */
const FINE_DECIMALS: Readonly<Record<ShownUnits['pressure'], number>> = { kPa: 1, psi: 2, bar: 3 }

function kindOf(name: string): ((units: ShownUnits) => Kind) | null {
  const steps = name.split('_')
  const ends = [steps.slice(-2).join('_'), steps.at(-1)!]
  const end = ends.find((candidate) => Object.hasOwn(KINDS, candidate))
  const isPer = steps.at(-2) === 'per' && end !== 'per_s' // so much a metre is no length
  return end === undefined || isPer ? null : KINDS[end]!
}

/** To half an inch, which is about the centimetre that others read: 3.2 m are "10 ft 6 in". */
function feetAndInches(metres: number): string {
  const halves = Math.round((Math.abs(metres) / METRES_PER_FOOT) * 24)
  const feet = Math.floor(halves / 24)
  const inches = Math.floor((halves % 24) / 2)
  const half = halves % 2 === 1
  const sign = metres < 0 && halves > 0 ? '-' : ''
  if (halves % 24 === 0) return `${sign}${feet} ft`
  const inchText = !half ? `${inches} in` : inches === 0 && feet === 0 ? '1/2 in' : `${inches} 1/2 in`
  return feet === 0 ? `${sign}${inchText}` : `${sign}${feet} ft ${inchText}`
}

function shareText(share: number): string {
  const percent = Math.round(share * 100)
  if (percent === 0 && share > 0) return 'under 1 %'
  if (percent === 100 && share < 1) return 'over 99 %'
  return `${percent} %`
}

/**
 * Name of the one-third-octave band with this mid-band frequency: the rounded value of the tenth-decade series.
 *
 * @see IEC 61260-1, annex E (nominal mid-band frequencies), from memory. [IEC61260] in sources.ts
 */
function nominalBandHz(midHz: number): number {
  const step = Math.round(10 * Math.log10(midHz))
  const decade = Math.floor(step / 10)
  return R10[step - 10 * decade]! * 10 ** (decade - 2)
}

const R10 = [100, 125, 160, 200, 250, 315, 400, 500, 630, 800]

/** Whole numbers as they are; others with up to three figures after the point that say something. */
function plainNumber(value: number): string {
  return Number.isInteger(value) ? String(value) : formatNumber(value, 3).replace(/\.?0+$/, '')
}
