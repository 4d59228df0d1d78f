/**
 * What the machine makes of the clips that the screen Practice asks, level by level:
 *
 *     npx tsx tests/bench/practice.ts [clips a level]
 *
 * The bubbling it judges by is the one that `bench:rings` prints of real sounds; places are those of `locate`.
 */
import { makeQuestion } from '../../shared/practice/drills/makeQuestion'
import type { Drill } from '../../shared/practice/drills/question'
import { figures } from '../../shared/practice/progress'

const LEVELS_DB = [24, 18, 12, 8, 4, 0]
const count = Number(process.argv[2] ?? 40)

const row = (drill: Drill, levelDb: number) => {
  const answers = Array.from({ length: count }, (_, i) => {
    const { truth, machine } = makeQuestion({ drill, seed: `bench/${drill}/${i}`, levelDb })
    return { ...machine!, truth }
  })
  const { rightShare, sensitivity, errorSpacings } = figures(answers)
  const share = `${percent(rightShare.share)} (${percent(rightShare.low)} to ${percent(rightShare.high)})`
  const ear = sensitivity && `d' ${sensitivity.dPrime.toFixed(2)}, c ${sensitivity.criterion.toFixed(2)}`
  const place = errorSpacings && `median error ${errorSpacings.median.toFixed(2)} spacings`
  return [`${levelDb} dB`.padStart(6), share.padEnd(24), ear ?? place ?? ''].join('  ')
}

const percent = (share: number) => `${Math.round(100 * share)} %`

for (const drill of ['leak', 'nearer', 'what', 'place', 'gauge'] as const) {
  console.log(`\n${drill}: ${count} questions a level, all invented`)
  for (const levelDb of LEVELS_DB) console.log(row(drill, levelDb))
}
