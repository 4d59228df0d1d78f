import type { DrawCommand } from './drawList'

export interface TwinEntry {
  readonly id: string
  readonly label: NonNullable<DrawCommand['label']>
  /** The point that the entry chooses; `null` where there is nothing to do. */
  readonly point: number | null
}

/** What matters most is heard first; the rest in the order of painting. */
const ORDER = ['source', 'tape', 'window', 'band', 'peg', 'listen', 'pipe', 'start', 'end']

/** Everything on a sketch that has words, for those who read or hear it instead of seeing it. */
export function twinEntries(commands: readonly DrawCommand[]): TwinEntry[] {
  const rank = ({ id }: DrawCommand) => {
    const place = ORDER.indexOf(id.split('-')[0]!)
    return place < 0 ? ORDER.length : place
  }
  return commands
    .flatMap((command) => (command.label === null ? [] : [{ command, label: command.label }]))
    .sort((a, b) => rank(a.command) - rank(b.command))
    .map(({ command, label }) => ({ id: command.id, label, point: command.kind === 'peg' ? command.point : null }))
}
