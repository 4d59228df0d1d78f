import { median } from '../../shared/base/statistics'
import { locateMix, type MixResult } from '../support/locateMix'

/**
 * Sweeps mixed from real sounds, from samples to verdict: how often the place is found, and how often a place is
 * claimed that should not be. `npm run bench:mixes -- 40` tries 40 seeds at each level, `-- 24 12,-10` two levels.
 *
 * Bounds: at 12 dB and more every one located within half a spacing; at 10 dB under the floor none located; in between
 * none located more than a spacing off. Ends with status 1 when one is broken.
 */
const seeds = Number(process.argv[2] ?? 24)
const LEVELS_DB = process.argv[3] ? process.argv[3].split(',').map(Number) : [20, 12, 6, 0, -10]

const percent = (part: number, whole: number) => (whole === 0 ? '-' : `${Math.round((100 * part) / whole)} %`)
const shown = (value: number | null) => (value === null ? '-' : value.toFixed(2))

function breaksBound(overFloorDb: number, { answer, errorSpacings }: MixResult): boolean {
  const located = answer.verdict === 'located'
  if (overFloorDb >= 12) return !located || errorSpacings! > 0.5
  if (overFloorDb <= -10) return located
  return located && errorSpacings! > 1
}

function summary(overFloorDb: number, results: readonly MixResult[]): string {
  const located = results.filter(({ answer }) => answer.verdict === 'located')
  const errors = located.map(({ errorSpacings }) => errorSpacings!)
  const held = located.filter(({ mix, answer }) => {
    const [low, high] = answer.sources[0]!.windowM
    return low <= mix.leakAlongM && mix.leakAlongM <= high
  })
  return [
    `${String(overFloorDb).padStart(4)} dB ${String(results.length).padStart(3)} mixes`,
    `located ${percent(located.length, results.length)}`,
    `median error ${errors.length > 0 ? median(errors).toFixed(2) : '-'}`,
    `worst ${errors.length > 0 ? Math.max(...errors).toFixed(2) : '-'} spacings`,
    `window holds the leak ${percent(held.length, located.length)}`,
    `bound broken ${results.filter((result) => breaksBound(overFloorDb, result)).length}`,
  ].join('   ')
}

async function level(overFloorDb: number): Promise<{ row: string; broken: number }> {
  const results: MixResult[] = []
  for (let seed = 1; seed <= seeds; seed++) {
    const result = await locateMix(seed, overFloorDb)
    const { mix, answer, errorSpacings, windowSpacings } = result
    results.push(result)
    console.log(
      `  ${String(overFloorDb).padStart(4)} dB  ${answer.verdict.padEnd(14)} error ${shown(errorSpacings)}  window ${shown(windowSpacings)}  ${mix.name}`,
    )
  }
  return {
    row: summary(overFloorDb, results),
    broken: results.filter((result) => breaksBound(overFloorDb, result)).length,
  }
}

async function main(): Promise<void> {
  console.log(`Real bubbly water through soil by the published laws, over real backgrounds; ${seeds} seeds a level.`)
  const rows: string[] = []
  let broken = 0
  for (const overFloorDb of LEVELS_DB) {
    const done = await level(overFloorDb)
    rows.push(done.row)
    broken += done.broken
  }
  console.log(
    `\nLevel of the water at the nearest point over the floor of nine clips in ten, best one-third-octave band:\n${rows.join('\n')}`,
  )
  process.exitCode = broken > 0 ? 1 : 0
}

await main()
