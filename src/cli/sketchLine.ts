/** What is drawn of a line in one row of text. */
export interface SketchedLine {
  /** Likelihood along the line, any unit, as the answer has it. */
  readonly density: { readonly alongM: readonly number[]; readonly perM: readonly number[] }
  /** The line itself; around it is ground. */
  readonly range: { readonly fromM: number; readonly toM: number }
  readonly points: readonly { readonly point: number; readonly alongM: number }[]
  readonly windows: readonly (readonly [number, number])[]
}

export interface SketchStyle {
  /** Columns to fill. */
  readonly width: number
  /** Shades and corners; else plain ASCII. */
  readonly shades: boolean
}

const SHADED = { ground: ' ', steps: ['─', '░', '▒', '▓', '█'], window: ['╰', '─', '╯', '┴'] } as const
const PLAIN = { ground: ' ', steps: ['-', ':', '=', '%', '#'], window: ['[', '_', ']', '|'] } as const
/** From which share of the highest cell on the next darker step is drawn. */
const STEP_SHARES = [0.04, 0.25, 0.5, 0.75]
/** Where the density is thinner than this share of its top, the ground past an end of the line is left off. */
const WORTH_SHOWING = 0.04

/**
 * The line seen from the side as a row of text that is darker where the leak is likelier, with the points' numbers under
 * it where they fit, and the windows under those.
 *
 * Steps of grey carry the meaning, so it reads without colour and on paper.
 *
 * @returns Lines without end-of-line marks: the row, the points, the windows when there are any.
 */
export function sketchLine(line: SketchedLine, { width, shades }: SketchStyle): string[] {
  const style = shades ? SHADED : PLAIN
  const [fromM, toM] = extent(line)
  const cellM = (toM - fromM) / width
  const cellOf = (alongM: number) => Math.min(width - 1, Math.max(0, Math.floor((alongM - fromM) / cellM)))
  const tops = highestPerCell(line, { width, cellOf, fromM, cellM })
  const top = tops.reduce((high, value) => Math.max(high, value), 0)
  const row = tops.map((value, cell) => {
    const middleM = fromM + (cell + 0.5) * cellM
    const step = top === 0 ? 0 : STEP_SHARES.filter((share) => value >= share * top).length
    const onLine = middleM >= line.range.fromM && middleM <= line.range.toM
    return step === 0 && !onLine ? style.ground : style.steps[step]!
  })
  const windows = line.windows.map(([low, high]) => windowRow(cellOf(low), cellOf(high), style.window))
  return [row.join(''), pegRow(line.points, cellOf, width), ...windows].map((text) => text.trimEnd())
}

/** The line and its points, and what lies past them as far as the density is worth showing. */
function extent({ density, range, points }: SketchedLine): [number, number] {
  const top = density.perM.reduce((high, value) => Math.max(high, value), 0)
  const likely = density.alongM.filter((_, i) => top > 0 && density.perM[i]! >= WORTH_SHOWING * top)
  const places = [range.fromM, range.toM, ...points.map(({ alongM }) => alongM), ...likely]
  const low = places.reduce((a, b) => Math.min(a, b))
  const high = places.reduce((a, b) => Math.max(a, b))
  return high > low ? [low, high] : [low - 0.5, high + 0.5]
}

interface Cells {
  readonly width: number
  readonly cellOf: (alongM: number) => number
  readonly fromM: number
  readonly cellM: number
}

/** A narrow peak must show however wide a cell is, so a cell shows its highest density, its own middle's at least. */
function highestPerCell({ density }: SketchedLine, { width, cellOf, fromM, cellM }: Cells): number[] {
  const tops = Array.from({ length: width }, (_, cell) => densityAt(density, fromM + (cell + 0.5) * cellM))
  for (const [i, alongM] of density.alongM.entries()) {
    if (alongM < fromM || alongM > fromM + width * cellM) continue
    const cell = cellOf(alongM)
    tops[cell] = Math.max(tops[cell]!, density.perM[i]!)
  }
  return tops
}

function densityAt({ alongM, perM }: SketchedLine['density'], placeM: number): number {
  const above = alongM.findIndex((place) => place >= placeM)
  if (above < 0 || (above === 0 && alongM[0] !== placeM)) return 0
  if (above === 0) return perM[0]!
  const share = (placeM - alongM[above - 1]!) / (alongM[above]! - alongM[above - 1]!)
  return perM[above - 1]! + share * (perM[above]! - perM[above - 1]!)
}

/** Numbers centred under their places; one that would touch the last is left out. */
function pegRow(points: SketchedLine['points'], cellOf: (alongM: number) => number, width: number): string {
  const row = Array.from({ length: width + 8 }, () => ' ')
  let free = 0
  for (const { point, alongM } of [...points].sort((a, b) => a.alongM - b.alongM || a.point - b.point)) {
    const text = String(point)
    const at = Math.max(0, cellOf(alongM) - Math.floor((text.length - 1) / 2))
    if (at < free) continue
    for (const [i, digit] of [...text].entries()) row[at + i] = digit
    free = at + text.length + 1
  }
  return row.join('')
}

function windowRow(low: number, high: number, [left, middle, right, narrow]: readonly string[]): string {
  const space = ' '.repeat(low)
  return low === high ? space + narrow! : `${space}${left}${middle!.repeat(high - low - 1)}${right}`
}
