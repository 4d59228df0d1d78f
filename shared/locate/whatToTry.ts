import { median } from '../base/statistics'
import { depthAt } from '../line/depthAt'
import type { Reason } from './answer'
import type { Facts } from './facts'

/** Clips shorter than this may fall between two gurgles, s: slugs leave 2 to 8 s of silence. Common practice, no source. */
const LONG_ENOUGH_S = 6
/** Points further apart than this many depths leave gaps in which nothing is heard. Chosen. */
const CLOSE_ENOUGH_DEPTHS = 2
/** Over its floor by this much an inlet is heard to hiss, dB. Chosen. */
const HISSES_DB = 6
/** A point within this many spacings of the inlet should hear it. Chosen. */
const NEAR_INLET_SPACINGS = 1.5
/** An inlet within this share of the line's length from an end lies at that end. Chosen. */
const AT_END_SHARE = 0.1
/** From this share of clips with some noise on, another hour is better. Chosen. */
const NOISY_SHARE = 0.25
/** Problems of a clip that are somebody else's noise. */
const NOISES: ReadonlySet<string> = new Set(['knocked', 'voice', 'windy', 'mains_hum', 'gain_riding'])

/**
 * What may let a leak be heard after none was: first what the sweep itself shows to be missing, then what always may
 * help.
 */
export function whatToTry(facts: Facts): Reason[] {
  const shown = [
    ...airDoesNotPass(facts),
    ...longerClips(facts),
    ...closerPoints(facts),
    ...quieterHour(facts),
    ...airOff(facts),
    ...otherEnd(facts),
  ]
  const keys = new Set(shown.map(({ key }) => key))
  const always: Reason[] = [
    { key: 'next_try_more_air', values: {} },
    ...(keys.has('next_try_other_end') ? [] : [{ key: 'next_try_either_end', values: {} }]),
    ...(keys.has('next_try_air_passes') ? [] : [{ key: 'next_try_air_reaches', values: {} }]),
  ]
  return [...shown, ...always]
}

/** The point that should hear the inlet; `null` where none is near it. */
function nearInlet({ line, points, spacingM }: Facts) {
  const { airInletM } = line
  if (airInletM === null) return null
  const near = points
    .filter(({ evidence }) => evidence.overFloorDb !== null)
    .map((point) => ({ point, distanceM: Math.abs(point.alongM - airInletM) }))
    .sort((a, b) => a.distanceM - b.distanceM)[0]
  return near && near.distanceM <= NEAR_INLET_SPACINGS * spacingM ? near : null
}

function airDoesNotPass(facts: Facts): Reason[] {
  const near = nearInlet(facts)
  if (!near || near.point.evidence.overFloorDb! >= HISSES_DB) return []
  return [{ key: 'next_try_air_passes', values: { point: near.point.point, distance_m: near.distanceM } }]
}

function longerClips({ model }: Facts): Reason[] {
  const lengths = model.settings.flatMap(({ rings }) => rings?.listenedS ?? [])
  const usual = lengths.length === 0 ? LONG_ENOUGH_S : median(lengths)
  // A recorder that is stopped by hand at six seconds is a little early or late.
  return usual >= LONG_ENOUGH_S - 0.5 ? [] : [{ key: 'next_try_longer', values: { duration_s: usual } }]
}

function closerPoints({ line, range, spacingM }: Facts): Reason[] {
  const { depthM } = depthAt(line, (range[0] + range[1]) / 2)
  if (spacingM <= CLOSE_ENOUGH_DEPTHS * depthM) return []
  const values = {
    spacing_m: spacingM,
    depth_m: depthM,
    closer_m: Math.min(CLOSE_ENOUGH_DEPTHS * depthM, spacingM / 2),
  }
  return [{ key: 'next_try_closer', values }]
}

function quieterHour({ soundings }: Facts): Reason[] {
  const noisy = soundings.filter(({ problems, evidence }) =>
    [...problems, ...(evidence?.problems ?? [])].some(({ key }) => NOISES.has(key)),
  )
  if (noisy.length < NOISY_SHARE * soundings.length) return []
  return [{ key: 'next_try_quieter', values: { clips: noisy.length, of_clips: soundings.length } }]
}

function airOff({ model }: Facts): Reason[] {
  return model.settings.some(({ off }) => off !== null) ? [] : [{ key: 'next_try_air_off', values: {} }]
}

function otherEnd(facts: Facts): Reason[] {
  const near = nearInlet(facts)
  const { airInletM } = facts.line
  if (!near || airInletM === null || facts.untoldInletM !== null || near.point.evidence.overFloorDb! < HISSES_DB)
    return []
  const [from, to] = facts.range
  const toEndM = Math.min(airInletM - from, to - airInletM)
  return toEndM <= AT_END_SHARE * (to - from) ? [{ key: 'next_try_other_end', values: { inlet_m: airInletM } }] : []
}
