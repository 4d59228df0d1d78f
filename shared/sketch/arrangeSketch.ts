import type { SketchPlace } from '../line/line'
import type { DrawCommand, DrawMark, DrawPeg, DrawPolyline, DrawText } from './drawList'

/** Pixels, x to the right, y down. */
export interface Spot {
  readonly x: number
  readonly y: number
}

export interface ArrangedPeg extends Spot {
  readonly peg: DrawPeg
  /** Its place on or beside the line; the square stands at `x`, `y`. */
  readonly foot: Spot
  /** False where there is no room for its square: then only its foot is drawn, until somebody zooms in. */
  readonly isShown: boolean
}

export interface ArrangedText extends Spot {
  readonly text: DrawText
}

export interface Arranged {
  readonly pegs: readonly ArrangedPeg[]
  /** Those there is room for. */
  readonly texts: readonly ArrangedText[]
}

export interface ArrangeOptions {
  readonly toSpot: (place: SketchPlace) => Spot
  /** Width of a text as it will be painted, px. */
  readonly textWidthPx: (text: DrawText) => number
  readonly pegPx: number
  /** From a peg's foot to the middle of its square, px. */
  readonly stemPx: number
  /** Letters stay within it. */
  readonly sheet: { readonly widthPx: number; readonly heightPx: number }
  /** What is on the sheet already, as its scale bar. */
  readonly reserved: readonly SketchBox[]
}

/** Middle and half sides, px. */
export interface SketchBox extends Spot {
  readonly halfX: number
  readonly halfY: number
}

const MARK_HALF_PX = 9
const TEXT_HALF_PX = { small: 8, normal: 10 } as const
const GAP_PX = 2
/** Boxes along the pipe keep letters off it, px. */
const PIPE_STEP_PX = 10
const PIPE_HALF_PX = 6
/** Most boxes along one stroke: a line zoomed in a thousandfold must not cost a thousandfold. */
const MOST_STEPS = 400

/**
 * Puts pegs and letters where they do not cover each other, at one scale.
 *
 * Pegs come first (the chosen one, the best one, then in order), each on its own side of the line or else the other one;
 * then letters, each at its own place or else turned round it. What finds no room is left out: the twin list has it.
 */
export function arrangeSketch(commands: readonly DrawCommand[], options: ArrangeOptions): Arranged {
  const { toSpot } = options
  const onSheet = commands.flatMap((command) => {
    if (command.kind === 'mark' && command.shape !== 'elbow') return [markBox(command, toSpot)]
    return command.kind === 'polyline' && (command.ink === 'pipe' || command.ink === 'decision')
      ? strokeBoxes(command, toSpot)
      : []
  })
  const taken: SketchBox[] = [...onSheet, ...options.reserved]
  const pipeAndMarks = taken.length
  const pegs = commands.filter((command) => command.kind === 'peg')
  const arranged = [...pegs]
    .sort((a, b) => urgency(a) - urgency(b))
    .map((peg) => standPeg(peg, taken, pipeAndMarks, options))
  const letters = commands.filter((command) => command.kind === 'text').sort((a, b) => weight(a) - weight(b))
  const texts = letters.flatMap((text) => roomForText(text, taken, options) ?? [])
  const byId = new Map(arranged.map((each) => [each.peg.id, each]))
  return { pegs: pegs.map(({ id }) => byId.get(id)!), texts }
}

/** The tape is dug by, and the ground can be told from its texture. */
function weight({ size, id }: DrawText): number {
  return size === 'normal' ? 0 : id.startsWith('ground') ? 2 : 1
}

function urgency({ chosen, state }: DrawPeg): number {
  return chosen ? 0 : state === 'best' ? 1 : 2
}

/** Squares may stand over the pipe's other legs, but never over each other. */
function standPeg(
  peg: DrawPeg,
  taken: SketchBox[],
  firstPeg: number,
  { toSpot, pegPx, stemPx }: ArrangeOptions,
): ArrangedPeg {
  const foot = toSpot(peg.at)
  const [sideX, sideY] = peg.side
  const spots = [stemPx, -stemPx].map((stem) => ({ x: foot.x + stem * sideX, y: foot.y - stem * sideY }))
  const boxes = spots.map(({ x, y }) => ({ x, y, halfX: pegPx / 2, halfY: pegPx / 2 }))
  const free = boxes.findIndex((box) => !taken.slice(firstPeg).some((other) => overlap(box, other)))
  const spot = spots[Math.max(free, 0)]!
  if (free >= 0) taken.push(boxes[free]!)
  return { peg, foot, ...spot, isShown: free >= 0 }
}

function roomForText(
  text: DrawText,
  taken: SketchBox[],
  { toSpot, textWidthPx, sheet }: ArrangeOptions,
): ArrangedText | null {
  const at = toSpot(text.at)
  const halfX = textWidthPx(text) / 2
  const halfY = TEXT_HALF_PX[text.size]
  for (const [right, up] of turnedOffsets(text.offsetPx, halfX, halfY)) {
    const shift = text.anchor === 'middle' ? 0 : text.anchor === 'start' ? halfX : -halfX
    const box = { x: at.x + right + shift, y: at.y - up, halfX, halfY }
    if (!isWithin(box, sheet) || taken.some((other) => overlap(box, other))) continue
    taken.push(box)
    return { text, x: box.x, y: box.y }
  }
  return null
}

/** The wanted offset, then the same and larger ones turned; a wide text is pushed out by its own half width. */
function turnedOffsets([right, up]: readonly [number, number], halfX: number, halfY: number): [number, number][] {
  const length = Math.hypot(right, up)
  const wanted = length === 0 ? Math.PI / 2 : Math.atan2(up, right)
  const offsets: [number, number][] = []
  for (const reach of [length, length + 12]) {
    for (const turn of [0, 1, -1, 2, -2, 3, -3, 4]) {
      const angle = wanted + (turn * Math.PI) / 4
      const out = Math.cos(angle) * Math.max(halfX - halfY, 0)
      offsets.push([reach * Math.cos(angle) + out, reach * Math.sin(angle)])
    }
  }
  return offsets
}

function markBox({ at }: DrawMark, toSpot: ArrangeOptions['toSpot']): SketchBox {
  return { ...toSpot(at), halfX: MARK_HALF_PX, halfY: MARK_HALF_PX }
}

function strokeBoxes({ places }: DrawPolyline, toSpot: ArrangeOptions['toSpot']): SketchBox[] {
  const spots = places.map(toSpot)
  return spots.slice(1).flatMap((to, i) => {
    const from = spots[i]!
    const steps = Math.min(MOST_STEPS, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / PIPE_STEP_PX))
    return Array.from({ length: steps + 1 }, (_, step) => ({
      x: from.x + ((to.x - from.x) * step) / Math.max(steps, 1),
      y: from.y + ((to.y - from.y) * step) / Math.max(steps, 1),
      halfX: PIPE_HALF_PX,
      halfY: PIPE_HALF_PX,
    }))
  })
}

function isWithin({ x, y, halfX, halfY }: SketchBox, { widthPx, heightPx }: ArrangeOptions['sheet']): boolean {
  return x >= halfX && y >= halfY && x <= widthPx - halfX && y <= heightPx - halfY
}

function overlap(a: SketchBox, b: SketchBox): boolean {
  return Math.abs(a.x - b.x) < a.halfX + b.halfX + GAP_PX && Math.abs(a.y - b.y) < a.halfY + b.halfY + GAP_PX
}
