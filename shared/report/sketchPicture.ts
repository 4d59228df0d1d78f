import { NO_DIGGING } from '../job/digging'
import type { JobLine } from '../job/job'
import type { SketchPlace } from '../line/line'
import { arrangeSketch } from '../sketch/arrangeSketch'
import { diggingOf } from '../sketch/diggingOf'
import type { DrawCommand, DrawMark } from '../sketch/drawList'
import { lineSketch } from '../sketch/lineSketch'
import { scaleBarM } from '../sketch/scaleBarM'
import { sketchBounds } from '../sketch/sketchBounds'
import { sketchPoints } from '../sketch/sketchPoint'
import { formatQuantity } from '../words/formatQuantity'
import { sentence, wordsOf } from '../words/sentence'
import type { ShownUnits } from '../words/shownUnits'
import type { Look, Picture, Shape } from './picture'
import type { ReportResult } from './reportResult'

const WIDTH_PX = 720
const MARGIN_PX = 60
const PEG_PX = 24
const STEM_PX = 34
/** About what letters of 15 px take each. */
const LETTER_PX = 8
const [LEAST_PX, MOST_PX] = [150, 420]
const MOST_PX_PER_M = 200
/** For the scale bar, below everything else. */
const STRIP_PX = 28

/** The line from above with the place, as plain shapes; `null` where there is nothing to draw. */
export function sketchPicture(
  line: JobLine,
  result: ReportResult | null,
  isConfirmed: boolean,
  units: ShownUnits,
): Picture | null {
  const told = result?.line ?? line.line
  const answer = result?.answer ?? null
  const rows = line.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row))
  const of = {
    line: told,
    points: answer === null ? [] : sketchPoints(rows, answer),
    answer,
    chosenPoint: null,
    isConfirmed,
    digging: diggingOf(told, answer?.sources[0], line.digging ?? NO_DIGGING),
    ...(line.signs && { signs: line.signs }),
    ...(line.site && { ends: line.site }),
  }
  const bounds = sketchBounds(lineSketch({ ...of, pxPerM: Number.POSITIVE_INFINITY }))
  if (bounds === null) return null
  const { lowXM, highXM, lowYM, highYM } = bounds
  const across = (WIDTH_PX - 2 * MARGIN_PX) / Math.max(highXM - lowXM, 1e-9)
  const up = (MOST_PX - 2 * MARGIN_PX) / Math.max(highYM - lowYM, 1e-9)
  const pxPerM = Math.min(across, up, MOST_PX_PER_M)
  const heightPx = Math.max(LEAST_PX, Math.round((highYM - lowYM) * pxPerM + 2 * MARGIN_PX))
  const sheetPx = heightPx + STRIP_PX
  const toSpot = ({ xM, yM }: SketchPlace) => ({
    x: WIDTH_PX / 2 + (xM - (lowXM + highXM) / 2) * pxPerM,
    y: heightPx / 2 - (yM - (lowYM + highYM) / 2) * pxPerM,
  })
  const commands = lineSketch({ ...of, pxPerM })
  const placed = arrangeSketch(commands, {
    toSpot,
    textWidthPx: ({ text }) => LETTER_PX * wordsOf(text, units).text.length,
    pegPx: PEG_PX,
    stemPx: STEM_PX,
    sheet: { widthPx: WIDTH_PX, heightPx },
    reserved: [],
  })
  const pegs = placed.pegs.flatMap(({ peg, foot, x, y, isShown }): Shape[] =>
    isShown ? pegShapes(peg.point, peg.state === 'best', foot, { x, y }) : [],
  )
  const texts = placed.texts.map(
    ({ text, x, y }): Shape => ({ kind: 'text', x, y: y + 5, anchor: 'middle', text: wordsOf(text.text, units).text }),
  )
  return {
    widthPx: WIDTH_PX,
    heightPx: sheetPx,
    label: sentence('label_line', {}),
    shapes: [
      ...commands.flatMap((command) => shapesOf(command, toSpot)),
      ...pegs,
      ...texts,
      ...scaleBar(pxPerM, sheetPx, units),
    ],
  }
}

const BAR_PX = 140

function scaleBar(pxPerM: number, heightPx: number, units: ShownUnits): Shape[] {
  const lengthM = scaleBarM(BAR_PX / pxPerM, units.length)
  const [x, y, widthPx] = [12, heightPx - 12, lengthM * pxPerM]
  return [
    shape(`M${x} ${y - 5}v5h${widthPx.toFixed(1)}v-5`, 'axis'),
    { kind: 'text', x: x + widthPx + 8, y, anchor: 'start', text: formatQuantity('bar_m', lengthM, units) },
  ]
}

type ToSpot = (place: SketchPlace) => { readonly x: number; readonly y: number }

function shapesOf(command: DrawCommand, toSpot: ToSpot): Shape[] {
  if (command.kind === 'polyline') {
    const d = pathOf(command.places, toSpot)
    const look = INKS[command.ink] ?? 'faint'
    return look === 'pipe' ? [shape(d, 'pipe'), shape(d, 'bore')] : [shape(d, look)]
  }
  if (command.kind === 'polygon') {
    return [shape(`${pathOf(command.places, toSpot)}Z`, INKS[command.ink] ?? 'ground')]
  }
  return command.kind === 'mark' ? markShapes(command, toSpot) : []
}

const INKS: Readonly<Partial<Record<string, Look>>> = {
  pipe: 'pipe',
  faint: 'faint',
  likelihood: 'likelihood',
  window: 'window',
  decision: 'decision',
  grass: 'ground',
  soil: 'ground',
  gravel: 'ground',
  pavers: 'ground',
  slab: 'ground',
  other: 'ground',
}

function markShapes({ at, shape: kind }: DrawMark, toSpot: ToSpot): Shape[] {
  const { x, y } = toSpot(at)
  if (kind === 'source') return [shape(`M${x - 10} ${y - 10}l20 20M${x - 10} ${y + 10}l20-20`, 'decision')]
  if (kind === 'fixed') return [shape(`M${x - 7} ${y - 7}h14v14h-14zl14 14m0-14l-14 14`, 'mark')]
  if (kind === 'elbow') return []
  if (kind === 'listen') return []
  return [shape(`M${x - 5} ${y - 5}h10v10h-10z`, 'mark')]
}

function pegShapes(
  point: number,
  isBest: boolean,
  foot: { x: number; y: number },
  at: { x: number; y: number },
): Shape[] {
  const half = Math.max(PEG_PX, 8 + 9 * String(point).length) / 2
  return [
    shape(`M${foot.x} ${foot.y}L${at.x} ${at.y}`, 'axis'),
    shape(`M${at.x - half} ${at.y - PEG_PX / 2}h${2 * half}v${PEG_PX}h${-2 * half}z`, isBest ? 'peg-best' : 'peg'),
    {
      kind: 'text',
      x: at.x,
      y: at.y + 5,
      anchor: 'middle',
      text: String(point),
      ...(isBest && { light: true as const }),
    },
  ]
}

const shape = (d: string, look: Look): Shape => ({ kind: 'path', d, look })

function pathOf(places: readonly SketchPlace[], toSpot: ToSpot): string {
  return places
    .map((place, i) => {
      const { x, y } = toSpot(place)
      return `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`
    })
    .join('')
}
