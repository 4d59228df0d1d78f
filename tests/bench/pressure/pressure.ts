import { HOLD_KINDS, type HoldKind } from './drawHold'
import { type HoldCounts, runHolds } from './runHolds'

/**
 * How often the judge of hold tests is right, on simulated tests: `npm run bench:pressure`. Ends with status 1 when a bound is
 * broken.
 *
 * The judge's figures (`JUDGE`) were set on the seeds `set`; what is printed here are others, `judged`. Change the figures only
 * with `npm run bench:pressure -- set`, and then look at these once.
 */
function main(): void {
  const [seeds = 'judged', times = '500'] = process.argv.slice(2)
  const count = Number(times)
  if (!Number.isInteger(count) || count < 1) {
    console.error(
      `"${times}" is no number of tests; call it as: npm run bench:pressure -- [seeds] [tests of each kind]`,
    )
    process.exit(2)
  }
  const counted = HOLD_KINDS.map((kind) => {
    if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${kind}`)
    return runHolds(seeds, kind, count)
  })
  if (process.stderr.isTTY) process.stderr.write('\r\x1b[K')
  console.log(`${count} simulated tests of each kind, seeds "${seeds}".\n`)
  for (const counts of counted) console.log(row(counts))
  const of = (kind: HoldKind) => counted.find((counts) => counts.kind === kind)!
  const bounds = [
    ['leak of 1.5 steps and more: holds', of('leak').holds, 0],
    ['leak of just 1.5 steps, warmed by a quarter: holds', of('least leak').holds, 0],
    ['leak, drift entered: holds', of('entered').holds, 0.02 * count],
    ['leak, drift seen as a bend: holds', of('bent').holds, 0.02 * count],
    ['tight and settled: drops', of('tight').drops, 0.02 * count],
    ['tight and settled: cannot tell', of('tight').cannotTell, 0.15 * count],
    ['leak of 3 steps and more: not drops', count - of('large leak').drops, 0.1 * count],
    ['drift that cancels the leak: held, and not said that no gauge can see it', of('cancelled').unsaid, 0],
  ] as const
  console.log('')
  for (const [what, value, most] of bounds) {
    console.log(`${value <= most ? 'met   ' : 'BROKEN'} ${what}: ${value}, at most ${Math.floor(most)}`)
  }
  process.exitCode = bounds.some(([, value, most]) => value > most) ? 1 : 0
}

function row({ kind, holds, drops, cannotTell, why }: HoldCounts): string {
  const reasons = [...why].sort(([, a], [, b]) => b - a).map(([key, count]) => `${key} ${count}`)
  const shown = [`holds ${holds}`, `drops ${drops}`, `cannot tell ${cannotTell}`]
    .map((text) => text.padEnd(16))
    .join('')
  return `${kind.padEnd(12)}${shown}\n            ${reasons.join(', ')}`
}

main()
