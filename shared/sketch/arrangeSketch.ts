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
  /** That the next foot is so near that round feet would hide the pipe. */
  readonly isCrowded: boolean
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
  /** What is on the sheet already, as its scale bar: neither letters nor squares go over it. */
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
/** Round feet closer than this would form a chain, px. */
const CROWDED_PX = 8
/** A peg on a long stalk stands behind those on short ones. */
const LONG_GAP_PX = 4
const STALK_STEP_PX = 6
const STALK_HALF_PX = 1
/** The tape's length is looked for room further out than other letters, px. */
const MORE_REACH_PX = { small: [0, 12], normal: [0, 12, 24, 36, 48] } as const
/** Boxes along the pipe keep letters off it, px. */
const PIPE_STEP_PX = 10
const PIPE_HALF_PX = 6
/** Most boxes along one stroke: a line zoomed in a thousandfold must not cost a thousandfold. */
const MOST_STEPS = 400

/**
 * Puts pegs and letters where they do not cover each other, at one scale.
 *
 * Pegs come first (the chosen one, the best one, then in order), each on its own side of the line or else the other one;
 * where that leaves some without room and a second row of longer stalks has room for all, they stand in two rows. Then letters, each at its own place or else turned round it. What finds no room is left out: the twin list has it.
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
  const pegs = commands.filter((command) => command.kind === 'peg')
  const arranged = standPegs(pegs, taken, options)
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

function standPegs(pegs: readonly DrawPeg[], taken: SketchBox[], options: ArrangeOptions): ArrangedPeg[] {
  const crowded = crowdedIds(pegs, options.toSpot)
  const sorted = [...pegs].sort((a, b) => urgency(a) - urgency(b))
  const { stemPx, pegPx } = options
  const longPx = stemPx + pegPx + LONG_GAP_PX
  const stand = (stemsPx: readonly number[]) => {
    const own = [...options.reserved]
    const stood = sorted.map((peg) => ({ ...standPeg(peg, own, stemsPx, options), isCrowded: crowded.has(peg.id) }))
    return { stood, own }
  }
  const oneRow = stand([stemPx, -stemPx])
  const twoRows = oneRow.stood.every(isSeen) ? oneRow : stand([stemPx, -stemPx, longPx, -longPx])
  const { stood, own } = twoRows.stood.every(isSeen) ? twoRows : oneRow
  taken.push(...own)
  return stood
}

function isSeen({ isShown }: { readonly isShown: boolean }): boolean {
  return isShown
}

/** Squares may stand over the pipe's other legs, but never over each other nor over each other's long stalks. */
function standPeg(
  peg: DrawPeg,
  taken: SketchBox[],
  stemsPx: readonly number[],
  { toSpot, pegPx, stemPx, sheet }: ArrangeOptions,
): Omit<ArrangedPeg, 'isCrowded'> {
  const foot = toSpot(peg.at)
  const [sideX, sideY] = peg.side
  const places = stemsPx.map((stem) => {
    const square = { x: foot.x + stem * sideX, y: foot.y - stem * sideY, halfX: pegPx / 2, halfY: pegPx / 2 }
    const isLong = Math.abs(stem) > stemPx
    return {
      square,
      stalk: isLong ? stalkBoxes(foot, square, pegPx / 2) : [],
      isPossible: !isLong || isWithin(square, sheet),
    }
  })
  const free = places.find(
    ({ square, stalk, isPossible }) =>
      isPossible && ![square, ...stalk].some((box) => taken.some((other) => overlap(box, other))),
  )
  if (free) taken.push(free.square, ...free.stalk)
  const { x, y } = (free ?? places[0]!).square
  return { peg, foot, x, y, isShown: free !== undefined }
}

/** From past the row of short stalks' feet to the square. */
function stalkBoxes(foot: Spot, square: Spot, clearPx: number): SketchBox[] {
  const lengthPx = Math.hypot(square.x - foot.x, square.y - foot.y)
  const steps = Math.floor((lengthPx - 2 * clearPx) / STALK_STEP_PX)
  return Array.from({ length: steps }, (_, i) => {
    const share = (clearPx + i * STALK_STEP_PX) / lengthPx
    return {
      x: foot.x + share * (square.x - foot.x),
      y: foot.y + share * (square.y - foot.y),
      halfX: STALK_HALF_PX,
      halfY: STALK_HALF_PX,
    }
  })
}

/** Pegs whose neighbour in the line's order is near. */
function crowdedIds(pegs: readonly DrawPeg[], toSpot: ArrangeOptions['toSpot']): Set<string> {
  const feet = pegs.map(({ at }) => toSpot(at))
  const isNear = (a: Spot | undefined, b: Spot | undefined) =>
    a !== undefined && b !== undefined && Math.hypot(a.x - b.x, a.y - b.y) < CROWDED_PX
  return new Set(
    pegs.filter((_, i) => isNear(feet[i - 1], feet[i]) || isNear(feet[i], feet[i + 1])).map(({ id }) => id),
  )
}

function roomForText(
  text: DrawText,
  taken: SketchBox[],
  { toSpot, textWidthPx, sheet }: ArrangeOptions,
): ArrangedText | null {
  const at = toSpot(text.at)
  const halfX = textWidthPx(text) / 2
  const halfY = TEXT_HALF_PX[text.size]
  for (const [right, up] of turnedOffsets(text, halfX, halfY)) {
    const shift = text.anchor === 'middle' ? 0 : text.anchor === 'start' ? halfX : -halfX
    const box = { x: at.x + right + shift, y: at.y - up, halfX, halfY }
    if (!isWithin(box, sheet) || taken.some((other) => overlap(box, other))) continue
    taken.push(box)
    return { text, x: box.x, y: box.y }
  }
  return null
}

/** The wanted offset, then the same and larger ones turned; a wide text is pushed out by its own half width. */
function turnedOffsets({ offsetPx: [right, up], size }: DrawText, halfX: number, halfY: number): [number, number][] {
  const length = Math.hypot(right, up)
  const wanted = length === 0 ? Math.PI / 2 : Math.atan2(up, right)
  const offsets: [number, number][] = []
  for (const more of MORE_REACH_PX[size]) {
    for (const turn of [0, 1, -1, 2, -2, 3, -3, 4]) {
      const angle = wanted + (turn * Math.PI) / 4
      const out = Math.cos(angle) * Math.max(halfX - halfY, 0)
      offsets.push([(length + more) * Math.cos(angle) + out, (length + more) * Math.sin(angle)])
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
