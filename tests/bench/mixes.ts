import { median } from '../../shared/base/statistics'
import { locateMix, type MixResult } from '../support/locateMix'

/**
 * Sweeps mixed from real sounds, from samples to verdict: how often the place is found, and how often a place is
 * claimed that should not be. `npm run bench:mixes -- 40` tries 40 seeds at each level.
 */
const LEVELS_DB = process.argv[3] ? process.argv[3].split(',').map(Number) : [20, 12, 6, 0, -10]
const seeds = Number(process.argv[2] ?? 24)

const percent = (part: number, whole: number) => `${Math.round((100 * part) / Math.max(1, whole))} %`
const shown = (value: number | null) => (value === null ? '-' : value.toFixed(2))

async function level(overFloorDb: number): Promise<string> {
  const results: MixResult[] = []
  for (let seed = 1; seed <= seeds; seed++) {
    const result = await locateMix(seed, overFloorDb)
    results.push(result)
    const { mix, answer, errorSpacings, windowSpacings } = result
    console.log(
      `  ${String(overFloorDb).padStart(4)} dB  ${answer.verdict.padEnd(14)} error ${shown(errorSpacings)}  window ${shown(windowSpacings)}  ${mix.name}`,
    )
  }
  const located = results.filter(({ answer }) => answer.verdict === 'located')
  const errors = located.map(({ errorSpacings }) => errorSpacings!)
  const held = located.filter(({ mix, answer }) => {
    const [low, high] = answer.sources[0]!.windowM
    return low <= mix.leakAlongM && mix.leakAlongM <= high
  })
  return [
    `${String(overFloorDb).padStart(4)} dB`,
    `located ${percent(located.length, results.length)}`,
    `median error ${errors.length > 0 ? median(errors).toFixed(2) : '-'}`,
    `worst ${errors.length > 0 ? Math.max(...errors).toFixed(2) : '-'} spacings`,
    `window holds the leak ${percent(held.length, located.length)}`,
  ].join('  ')
}

async function main(): Promise<void> {
  console.log(`Real bubbly water through soil by the published laws, over real backgrounds; ${seeds} seeds a level.`)
  const rows: string[] = []
  for (const overFloorDb of LEVELS_DB) rows.push(await level(overFloorDb))
  console.log(`\nSignal over floor at the nearest point, best one-third-octave band:\n${rows.join('\n')}`)
}

await main()
