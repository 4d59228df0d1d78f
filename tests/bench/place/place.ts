import { readFileSync, writeFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { type BenchCall, benchCall, sweepOrders, USAGE } from './benchCall'
import { filesToAnswerS } from './filesToAnswer'
import type { Judged } from './judgeSweep'
import { byFamily, type PlaceBound, placeBounds } from './placeBounds'
import { placeFigures, pooled } from './placeFigures'
import { familyRows, placeTable, type TableRow } from './placeTable'
import { tableNotes, withTable } from './readmeTable'
import { runSweeps } from './runSweeps'

/**
 * How exact and how honest the place is, in the synthetic yard: `npm run bench:place`. Prints tables and bounds, and ends
 * with status 1 when a bound is broken. `--audio 40` judges the sound of forty yards beside their drawn evidence.
 */
async function main(): Promise<void> {
  const call = readCall()
  const answerS = filesToAnswerS()
  const judged = await runSweeps(sweepOrders(call), call.cores ?? availableParallelism(), (done) =>
    progress(call, done),
  )
  if (process.stderr.isTTY) process.stderr.write('\r\x1b[K')
  const speed: PlaceBound = {
    what: '15 points, on and off, 6 s at 48 kHz: files to answer, from cold, s',
    value: answerS.toFixed(2),
    bound: '< 2',
    met: answerS < 2,
  }
  const bounds = call.audioYards > 0 ? [speed] : [...placeBounds(judged), speed]
  if (call.audioYards > 0) printBothEntries(judged)
  else printTables(familyRows(judged))
  printBounds(bounds)
  if (call.json !== null) writeJson(call.json, judged, bounds)
  if (call.readme) writeReadme(call, judged)
  process.exitCode = bounds.some(({ met }) => met === false) ? 1 : 0
}

function readCall(): BenchCall {
  try {
    return benchCall(process.argv.slice(2))
  } catch (error) {
    fail(`${(error as Error).message.split('. ')[0]}\n${USAGE}`)
  }
}

function fail(text: string): never {
  console.error(text)
  process.exit(2)
}

function progress(call: BenchCall, done: number): void {
  if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${sweepOrders(call).length} sweeps`)
}

function printTables(rows: readonly TableRow[]): void {
  console.log(`${placeTable(rows)}\n\n${placeTable(rows, true)}`)
}

/** Pooled figures of the sound and of the drawn evidence of the same yards, and where they part. */
function printBothEntries(judged: readonly Judged[]): void {
  const drawn = judged.filter(({ entry }) => entry === 'drawn')
  const sound = judged.filter(({ entry }) => entry === 'audio')
  const row = (name: string, sweeps: readonly Judged[]) => ({ name, figures: placeFigures(sweeps) })
  printTables([
    ...(pooled(drawn).length > 0 ? [row('drawn, pooled', pooled(drawn)), row('sound, pooled', pooled(sound))] : []),
    row('drawn, all', drawn),
    row('sound, all', sound),
  ])
  const agree = drawn.filter(({ verdict }, i) => verdict === sound[i]!.verdict).length
  const { spoiltNamed, wronglyAside } = placeFigures(sound)
  console.log(`\nThe same verdict from both: ${agree} of ${drawn.length}.`)
  console.log(
    `Of the sound: spoilt clips named ${spoiltNamed.count} of ${spoiltNamed.of}; others set aside: ${wronglyAside}.`,
  )
}

function printBounds(bounds: readonly PlaceBound[]): void {
  const width = Math.max(...bounds.map(({ what }) => what.length))
  const said = { true: 'met', false: 'BROKEN', null: 'too few to tell' }
  console.log(
    `\n${bounds.map(({ what, value, bound, met }) => `${what.padEnd(width)}  ${value.padEnd(28)} ${bound.padEnd(20)} ${said[`${met}`]}`).join('\n')}`,
  )
}

function writeJson(file: string, judged: readonly Judged[], bounds: readonly PlaceBound[]): void {
  const inPool = pooled(judged)
  const results = {
    families: byFamily(judged),
    pooled: inPool.length === 0 ? null : placeFigures(inPool),
    bounds,
    sweeps: judged,
  }
  writeFileSync(file, `${JSON.stringify(results, null, 1)}\n`)
}

function writeReadme({ perFamily, firstSeed }: BenchCall, judged: readonly Judged[]): void {
  const file = fileURLToPath(new URL('../../../README.md', import.meta.url))
  const seeds = `judge-${firstSeed} to judge-${firstSeed + perFamily - 1}`
  const text = `${placeTable(familyRows(judged))}\n\n${tableNotes({ sweeps: judged.length, seeds, perFamily })}`
  const written = withTable(readFileSync(file, 'utf8'), text)
  if (written === null) fail('README.md has no marks for the table of places')
  writeFileSync(file, written)
}

await main()
