import { parseArgs } from 'node:util'
import { FAMILIES, familyNamed } from '../../../shared/synth/families'
import type { SweepOrder } from './judgeSweep'

/** What the bench was asked for. */
export interface BenchCall {
  readonly perFamily: number
  readonly families: readonly string[]
  readonly firstSeed: number
  /** Yards to be rendered as sound and judged beside their drawn evidence; 0: none, drawn evidence only. */
  readonly audioYards: number
  readonly json: string | null
  readonly readme: boolean
  readonly cores: number | null
}

export const USAGE =
  'npm run bench:place -- [sweeps per family] [family or all] [first seed] [--audio YARDS] [--json FILE] [--readme] [--cores N]'

/** Reads the words of the call. @throws {Error} with one line that says what is wrong. */
export function benchCall(words: readonly string[]): BenchCall {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      audio: { type: 'string' },
      json: { type: 'string' },
      readme: { type: 'boolean', default: false },
      cores: { type: 'string' },
    },
  })
  const [perFamily = '60', family = 'all', firstSeed = '1', ...more] = positionals
  if (more.length > 0) throw new Error(`"${more[0]}" is one word too many; a family of several words stands in quotes`)
  if (family !== 'all' && familyNamed(family) === null)
    throw new Error(`no family "${family}"; there are: ${FAMILIES.map(({ name }) => name).join(', ')}`)
  const call = {
    perFamily: wholeNumber('sweeps per family', perFamily, 1),
    families: family === 'all' ? FAMILIES.map(({ name }) => name) : [family],
    firstSeed: wholeNumber('first seed', firstSeed, 0),
    audioYards: values.audio === undefined ? 0 : wholeNumber('--audio', values.audio, 1),
    json: values.json ?? null,
    readme: values.readme,
    cores: values.cores === undefined ? null : wholeNumber('--cores', values.cores, 1),
  }
  if (call.readme && (family !== 'all' || call.audioYards > 0))
    throw new Error('--readme needs every family, from drawn evidence')
  return call
}

function wholeNumber(name: string, text: string, least: number): number {
  if (/^\d{1,7}$/.test(text) && Number(text) >= least) return Number(text)
  throw new Error(`${name} is "${text}"; a whole number from ${least} on is needed`)
}

/** How many times the sweeps of other families are drawn without a leak: 200 of them to 60. */
const NO_LEAK_TIMES = 10 / 3

/** Sweeps of a call. Their seeds are those of this bench alone: nothing is tuned on them. */
export function sweepOrders({ perFamily, families, firstSeed, audioYards }: BenchCall): SweepOrder[] {
  const order = (family: string, seed: number, entry: SweepOrder['entry']) => ({ family, seed: `judge-${seed}`, entry })
  if (audioYards > 0)
    return (['drawn', 'audio'] as const).flatMap((entry) =>
      Array.from({ length: audioYards }, (_, i) =>
        order(families[i % families.length]!, firstSeed + Math.floor(i / families.length), entry),
      ),
    )
  return families.flatMap((family) =>
    Array.from({ length: family === 'no leak' ? Math.ceil(NO_LEAK_TIMES * perFamily) : perFamily }, (_, i) =>
      order(family, firstSeed + i, 'drawn'),
    ),
  )
}
