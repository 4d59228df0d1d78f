import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { mean, standardDeviation } from '../../../shared/base/statistics'
import { FAMILIES } from '../../../shared/synth/families'
import { inProcesses } from '../inProcesses'
import type { DetectedOrder, DetectedSweep } from './detectedSweep'

/**
 * What a detector adds to the place: `npm run bench:detected`. The same sweeps, rendered to sound and located without it and
 * with it, family by family; it is worse where it loses more than its own scatter allows. Beside it
 * stands one that is told the truth of every clip: so much could be gained at most. `noisy`: only the families in which
 * something else sounds.
 */
const USAGE = 'usage: npm run bench:detected -- [SWEEPS A FAMILY] [MODEL] [noisy]'
const WORKER = fileURLToPath(new URL('./detectedSweep.ts', import.meta.url))
const STARTING = fileURLToPath(new URL('../../../public/starting-detector.json', import.meta.url))
/** An error of more than a spacing counts as one: the wrong hole is the wrong hole. */
const MOST_ERROR = 1
/** Families in which something else sounds as well: there it is asked to help. */
const NOISY = ['nuisances', 'spoilt clips', 'moving air', 'slugs', 'inlet', 'riding gain']

async function main(): Promise<void> {
  const words = process.argv.slice(2)
  const families = words.at(-1) === 'noisy' ? FAMILIES.filter(({ name }) => NOISY.includes(name)) : FAMILIES
  const [told = '12', modelPath = STARTING, ...more] = words.at(-1) === 'noisy' ? words.slice(0, -1) : words
  if (more.length > 0 || !/^[1-9]\d{0,3}$/.test(told)) {
    console.error(USAGE)
    process.exit(2)
  }
  const orders: DetectedOrder[] = families.flatMap(({ name }) =>
    Array.from({ length: Number(told) }, (_, i) => ({ family: name, seed: `detected-${i + 1}`, modelPath })),
  )
  const sweeps = await inProcesses<DetectedOrder, DetectedSweep>(WORKER, orders, availableParallelism(), (done) => {
    if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${done} of ${orders.length} sweeps`)
  })
  if (process.stderr.isTTY) process.stderr.write('\r\x1b[K')
  console.log(
    `${orders.length} sweeps, each without and with the detector; errors in spacings, at most ${MOST_ERROR}\n`,
  )
  console.log(
    '| family               | mean error without | with  | change          | by the truth    | located | claimed without a leak |        |',
  )
  console.log(
    '|----------------------|-------------------:|------:|----------------:|----------------:|--------:|-----------------------:|--------|',
  )
  for (const { name } of families) {
    printRow(
      name,
      sweeps.filter(({ family }) => family === name),
    )
  }
  printRow('all', sweeps)
  const noisy = sweeps.filter(({ family }) => NOISY.includes(family))
  printRow('the noisy ones', noisy)
  const [gained, mostGained] = [changeBy(cappedErrors(noisy), 1), changeBy(cappedErrors(noisy), 2)]
  console.log(
    `\nWhere something else sounds, a detector that is told the truth of every clip changes the error by ${mostGained.told}:` +
      ` so much is left to be gained by any detector of single clips. This one changes it by ${gained.told}.`,
  )
}

/** Errors without, with, and by the truth; of the sweeps that have one leak. */
function cappedErrors(sweeps: readonly DetectedSweep[]): readonly (readonly number[])[] {
  return sweeps.flatMap(({ without, withDetector, withTruth }) =>
    without.error === null || withDetector.error === null || withTruth.error === null
      ? []
      : [[without.error, withDetector.error, withTruth.error].map((error) => Math.min(MOST_ERROR, error))],
  )
}

/** Mean of the paired changes, with twice its standard error. */
function changeBy(errors: readonly (readonly number[])[], side: 1 | 2) {
  const changes = errors.map((pair) => pair[side]! - pair[0]!)
  const change = changes.length === 0 ? 0 : mean(changes)
  const doubt = changes.length < 2 ? 0 : (2 * standardDeviation(changes)) / Math.sqrt(changes.length)
  return { change, doubt, told: changes.length === 0 ? '-' : `${change.toFixed(3)} ± ${doubt.toFixed(3)}` }
}

function printRow(name: string, sweeps: readonly DetectedSweep[]): void {
  const pairs = cappedErrors(sweeps)
  const { change, doubt, told } = changeBy(pairs, 1)
  const located = count(sweeps, (worth) => worth.leaks > 0 && worth.verdict === 'located')
  const claimed = count(sweeps, (worth) => worth.leaks === 0 && worth.verdict !== 'no leak heard')
  const isWorse = change > Math.max(doubt, 0.005) || claimed[1] > claimed[0] + 2
  const of = (side: 0 | 1) => (pairs.length === 0 ? '-' : mean(pairs.map((pair) => pair[side]!)).toFixed(3))
  console.log(
    `| ${name.padEnd(20)} | ${of(0).padStart(18)} | ${of(1).padStart(5)} | ${told.padStart(15)} | ${changeBy(pairs, 2).told.padStart(15)} | ${`${located[0]}, ${located[1]}`.padStart(7)} | ${`${claimed[0]}, ${claimed[1]}`.padStart(22)} | ${(isWorse ? 'WORSE' : change < -doubt ? 'better' : 'as is').padEnd(6)} |`,
  )
}

function count(
  sweeps: readonly DetectedSweep[],
  isOne: (worth: DetectedSweep['without']) => boolean,
): readonly [number, number] {
  return [
    sweeps.filter(({ without }) => isOne(without)).length,
    sweeps.filter(({ withDetector }) => isOne(withDetector)).length,
  ]
}

await main()
