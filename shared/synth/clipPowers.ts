import { meanPsd } from './drawEmitters'
import { bandPower, CELL_WIDTH_HZ, SIGNAL_BANDS } from './grid'
import type { Spot } from './ground'
import { hearing } from './hearing'
import type { ClipPlan, Emitter, Yard } from './yard'
import { isCounted } from './yardUnknowns'

/** Mean powers of a clip by band of `SIGNAL_BANDS`, before the setting-down's gain and the recorder. */
export interface ClipPowers {
  readonly leak: readonly number[]
  readonly withAir: readonly number[]
  readonly floor: readonly number[]
  /** Of each inlet and machine, in the order of the yard's emitters. */
  readonly others: readonly (readonly number[])[]
  readonly total: readonly number[]
}

/** What a clip should show on average: the leaks', all that sounds with the air, the floor's and the sum. Moving air and nuisances are left out. */
export function clipPowers(yard: Yard, plan: ClipPlan): ClipPowers {
  const rise = 10 ** (plan.floorDb / 10)
  const drift = 10 ** (plan.driftDb / 10)
  const floor = SIGNAL_BANDS.map((band) => bandPower(yard.floorPsd, band) * rise + bandPower(yard.selfNoisePsd, band))
  const leak = SIGNAL_BANDS.map(() => 0)
  const withAir = SIGNAL_BANDS.map(() => 0)
  const total = [...floor]
  const others: number[][] = []
  for (const emitter of yard.emitters) {
    if (emitter.kind !== 'leak' && !isCounted(emitter)) continue
    const isSilent = plan.row.air === 'off' && emitter.sounds === 'with air'
    const powers = SIGNAL_BANDS.map(() => 0)
    if (emitter.kind !== 'leak') others.push(powers)
    if (isSilent) continue
    for (const [b, heard] of bandsHeard(yard, emitter, plan.spot).entries()) {
      const power = heard * (emitter.sounds === 'with air' ? drift : 1)
      powers[b] = power
      total[b]! += power
      if (emitter.kind === 'leak') leak[b]! += power
      if (emitter.sounds === 'with air') withAir[b]! += power
    }
  }
  return { leak, withAir, floor, others, total }
}

function bandsHeard(yard: Yard, emitter: Emitter, spot: Spot): number[] {
  const path = hearing(yard.ground, emitter, spot)
  const mean = spectrumOf(emitter)
  return SIGNAL_BANDS.map((band) => {
    let power = 0
    for (let g = band.firstCell; g < band.firstCell + 3; g++) power += mean[g]! * path[g]! * CELL_WIDTH_HZ[g]!
    return power
  })
}

const spectra = new WeakMap<Emitter, Float64Array>()

function spectrumOf(emitter: Emitter): Float64Array {
  const known = spectra.get(emitter) ?? meanPsd(emitter)
  spectra.set(emitter, known)
  return known
}
