/** Fewer bursts say nothing of rhythm. */
const LEAST_GAPS = 5

/**
 * How clockwork a train of bursts is: 1 when every gap equals the next, 0 for random (Poisson) arrivals or a more
 * clustered train.
 *
 *     1 − Lv,   Lv = 3/(n − 1)·Σ ((g[i] − g[i+1]) / (g[i] + g[i+1]))²,   g: gaps less the dead time
 *
 * Lv compares neighbouring gaps only, so a train that slowly quickens stays regular. Its mean is 1 for Poisson arrivals;
 * the dead time is taken off because what is left of a gap is then exponential again.
 *
 * @param timesS Onsets in rising order, s.
 * @param deadTimeS Bursts closer than this cannot be told apart, s.
 * @returns 0 to 1; `null` for fewer than 6 bursts.
 * @see Shinomoto, Shima & Tanji 2003, local variation. [ShinomotoShimaTanji2003] in shared/base/sources.ts
 */
export function regularity(timesS: ArrayLike<number>, deadTimeS = 0): number | null {
  const count = timesS.length - 1
  if (count < LEAST_GAPS) return null
  let sum = 0
  for (let i = 0; i + 1 < count; i++) {
    const gap = Math.max(0, timesS[i + 1]! - timesS[i]! - deadTimeS)
    const next = Math.max(0, timesS[i + 2]! - timesS[i + 1]! - deadTimeS)
    if (gap + next > 0) sum += ((gap - next) / (gap + next)) ** 2
  }
  return Math.max(0, Math.min(1, 1 - (3 * sum) / (count - 1)))
}

/** Fewer rings have no swell worth naming. */
const LEAST_RINGS = 12
const SLOWEST_HZ = 0.1
const FASTEST_HZ = 3
/** A swell must be heard this often in the clip. */
const LEAST_SWELLS = 3
/** Odds that random arrivals would seem to swell at all. Chosen. */
const FALSE_ALARM = 0.01

/**
 * Rate at which a bubbling swells and fades in slugs.
 *
 *     z(f) = |Σ exp(−2πi·f·t)|² / n
 *
 * z is about exponential with mean 1 for random arrivals (Rayleigh's test). The mean is taken from the z of all the
 * other rates, so that clusters without a rhythm do not pass for one.
 *
 * @param timesS Onsets of rings, s.
 * @param durationS Length of the clip, s.
 * @returns Hz, 0.1 to 3; `null` when there is none, or too few rings to tell.
 */
export function slugRateHz(timesS: ArrayLike<number>, durationS: number): number | null {
  if (timesS.length < LEAST_RINGS) return null
  const slowest = Math.max(SLOWEST_HZ, LEAST_SWELLS / durationS)
  const stepHz = 1 / (3 * durationS) // three looks in the width of a line
  const count = Math.floor((FASTEST_HZ - slowest) / stepHz) + 1
  if (count < 10) return null
  const swell = Float64Array.from({ length: count }, (_, k) => swellAt(timesS, slowest + k * stepHz))
  let top = 0
  for (let k = 1; k < count; k++) if (swell[k]! > swell[top]!) top = k
  const typical = Math.max(1, swell.slice().sort()[count >> 1]! / Math.LN2)
  const isRhythm = swell[top]! / typical > Math.log(count / FALSE_ALARM)
  return isRhythm ? slowest + top * stepHz : null
}

function swellAt(timesS: ArrayLike<number>, rateHz: number): number {
  let re = 0
  let im = 0
  for (let i = 0; i < timesS.length; i++) {
    const angle = 2 * Math.PI * rateHz * timesS[i]!
    re += Math.cos(angle)
    im += Math.sin(angle)
  }
  return (re * re + im * im) / timesS.length
}
