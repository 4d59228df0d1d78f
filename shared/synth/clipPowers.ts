import { meanPsd } from './drawEmitters'
import { bandPower, CELL_WIDTH_HZ, nearestCell, SIGNAL_BANDS } from './grid'
import type { Spot } from './ground'
import { hearing } from './hearing'
import { couplingPower } from './parts'
import type { ClipPlan, Emitter, Yard } from './yard'
import { isCounted } from './yardUnknowns'

/** Mean powers of a clip by band of `SIGNAL_BANDS`, as they come to the recorder: through the setting-down's coupling. */
export interface ClipPowers {
  readonly leak: readonly number[]
  /** What of the leak's are bubbles. */
  readonly bubbles: readonly number[]
  readonly withAir: readonly number[]
  /** Noise of the ground. */
  readonly ambient: readonly number[]
  /** The microphone's own, which no coupling changes. */
  readonly self: readonly number[]
  /** Of each inlet and machine, in the order of the yard's emitters. */
  readonly others: readonly (readonly number[])[]
  readonly total: readonly number[]
}

/** What a clip should show on average. Moving air and nuisances are left out. */
export function clipPowers(yard: Yard, plan: ClipPlan): ClipPowers {
  const coupling = couplingPower(plan)
  const rise = 10 ** (plan.floorDb / 10)
  const drift = 10 ** (plan.driftDb / 10)
  const none = () => SIGNAL_BANDS.map(() => 0)
  const self = SIGNAL_BANDS.map((band) => bandPower(yard.selfNoisePsd, band))
  const ground = yard.floorPsd.map((p, g) => p * coupling[g]! * rise)
  const ambient = SIGNAL_BANDS.map((band) => bandPower(ground, band))
  const total = ambient.map((power, b) => power + self[b]!)
  const leak = none()
  const bubbles = none()
  const withAir = none()
  const others: number[][] = []
  for (const emitter of yard.emitters) {
    const isLeak = emitter.kind === 'leak'
    if (!isLeak && !isCounted(emitter)) continue
    const powers = none()
    if (!isLeak) others.push(powers)
    const goesWithAir = emitter.sounds === 'with air'
    if (goesWithAir && plan.row.air === 'off') continue
    const heard = bandsHeard(yard, emitter, plan.spot, coupling)
    for (let b = 0; b < powers.length; b++) {
      const power = heard.all[b]! * (goesWithAir ? drift : 1)
      powers[b] = power
      total[b]! += power
      if (goesWithAir) withAir[b]! += power
      if (!isLeak) continue
      leak[b]! += power
      bubbles[b]! += power - heard.hiss[b]! * drift
    }
  }
  return { leak, bubbles, withAir, ambient, self, others, total }
}

function bandsHeard(yard: Yard, emitter: Emitter, spot: Spot, coupling: Float64Array) {
  const path = hearing(yard.ground, emitter, spot)
  const through = (cells: Float64Array | null) =>
    SIGNAL_BANDS.map(({ firstCell }) => {
      let power = 0
      for (let g = firstCell; cells !== null && g < firstCell + 3; g++) power += cells[g]! * path[g]! * coupling[g]!
      return power
    })
  return {
    all: through(cellPowers(emitter)),
    hiss: through(emitter.hissPsd?.map((p, g) => p * CELL_WIDTH_HZ[g]!) ?? null),
  }
}

const known = new WeakMap<Emitter, Float64Array>()

/** Mean power at 1 m in each cell of the grid, tones in the cell nearest to them. */
function cellPowers(emitter: Emitter): Float64Array {
  const kept = known.get(emitter)
  if (kept !== undefined) return kept
  const powers = meanPsd(emitter).map((p, g) => p * CELL_WIDTH_HZ[g]!)
  for (const tone of emitter.tones) powers[nearestCell(tone.frequencyHz)]! += tone.power
  known.set(emitter, powers)
  return powers
}
