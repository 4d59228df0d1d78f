import type { Site } from '../job/site'
import type { FittingKind, Line, NoiseKind } from '../line/line'
import { directionAlong, placeAlong } from '../line/placeAlong'
import type { Reason } from '../locate/answer'
import type { DrawCommand, DrawMark } from './drawList'
import { cornersBetween, type SketchFrame } from './sketchFrame'

/** The pipe itself, to scale with its bends, and on to whatever lies outside its ends. */
export function pipeStrokes(frame: SketchFrame, line: Line): DrawCommand[] {
  const { path, fromM, toM } = frame
  const beyond = [line.airInletM, ...line.noises.map(({ atM }) => atM)].filter((atM) => atM !== null)
  const lowM = Math.min(fromM, ...beyond.filter(Number.isFinite))
  const highM = Math.max(toM, ...beyond.filter(Number.isFinite))
  const stroke = (id: string, from: number, to: number, label: Reason | null): DrawCommand[] =>
    to - from > 1e-9
      ? [
          {
            kind: 'polyline',
            id,
            label,
            certainty: label === null ? 'inferred' : 'measured',
            places: cornersBetween(path, from, to).map((alongM) => placeAlong(path, alongM)),
            widthPx: label === null ? 2 : 5,
            ink: label === null ? 'faint' : 'pipe',
            stroke: label === null ? 'dashed' : 'solid',
          },
        ]
      : []
  const bends = cornersBetween(path, fromM, toM).length - 2
  const values = { length_m: toM - fromM, bends }
  const key = line.lengthM === null ? 'sketch_line_assumed' : bends === 0 ? 'sketch_line_straight' : 'sketch_line'
  return [
    ...stroke('before-start', lowM, fromM, null),
    ...stroke('past-end', toM, highM, null),
    ...stroke('pipe', fromM, toM, { key, values }),
  ]
}

/** What a mark is called beside it, and what it is in the twin list. */
interface MarkWords {
  readonly name: string
  readonly label: string
  /** The same of one with a name of its own. */
  readonly labelNamed?: string
}

const START: MarkWords = { name: 'label_sketch_start', label: 'sketch_start', labelNamed: 'sketch_start_named' }
const END: MarkWords = { name: 'label_sketch_end', label: 'sketch_end', labelNamed: 'sketch_end_named' }
const INLET: MarkWords = { name: 'label_sketch_inlet', label: 'sketch_inlet' }

const NOISES: Readonly<Record<NoiseKind, MarkWords>> = {
  pump: { name: 'label_sketch_pump', label: 'sketch_noise_pump' },
  motor: { name: 'label_sketch_motor', label: 'sketch_noise_motor' },
  traffic: { name: 'label_sketch_traffic', label: 'sketch_noise_traffic' },
  water: { name: 'label_sketch_water', label: 'sketch_noise_water' },
  other: { name: 'label_sketch_noise', label: 'sketch_noise_other' },
}

/** The end of the line has its own mark. */
const FITTINGS: Readonly<Record<FittingKind, { shape: DrawMark['shape'] | null; label: string }>> = {
  elbow: { shape: 'elbow', label: 'sketch_fitting_elbow' },
  tee: { shape: 'tee', label: 'sketch_fitting_tee' },
  coupling: { shape: 'coupling', label: 'sketch_fitting_coupling' },
  valve: { shape: 'valve', label: 'sketch_fitting_valve' },
  end: { shape: null, label: 'sketch_end' },
  other: { shape: 'coupling', label: 'sketch_fitting_other' },
}

/** Start and end, fittings, the air inlet and noises, each with its name where there is room. */
export function lineMarks(
  frame: SketchFrame,
  line: Line,
  ends: Pick<Site, 'startName' | 'endName'> = { startName: '', endName: '' },
): DrawCommand[] {
  const inlet = line.airInletM
  return [
    ...marked(frame, 'start', 'start', frame.fromM, START, ends.startName).filter(
      ({ kind }) => kind !== 'text' || ends.startName !== '' || inlet === null || !isBeside(frame, inlet),
    ),
    ...marked(frame, 'end', 'end', frame.toM, END, ends.endName),
    ...line.fittings.flatMap(({ kind, atM }, i) => fittingMark(frame, kind, atM, i)),
    ...(inlet === null ? [] : marked(frame, 'inlet', 'inlet', inlet, INLET)),
    ...line.noises.flatMap(({ kind, atM }, i) => marked(frame, `noise-${i}`, 'noise', atM, NOISES[kind])),
  ]
}

/** Nearer than this, px, the word "start" would be read as the inlet's name, and somebody measure from there. */
const BESIDE_PX = 80

function isBeside({ fromM, pxPerM }: SketchFrame, inletM: number): boolean {
  return Math.abs(inletM - fromM) * pxPerM < BESIDE_PX
}

function fittingMark(frame: SketchFrame, kind: FittingKind, atM: number, i: number): DrawCommand[] {
  const { shape } = FITTINGS[kind]
  if (shape === null || !Number.isFinite(atM)) return []
  return [mark(frame, `fitting-${i}`, shape, atM, FITTINGS[kind].label)]
}

function marked(
  frame: SketchFrame,
  id: string,
  shape: DrawMark['shape'],
  atM: number,
  words: MarkWords,
  name = '',
): DrawCommand[] {
  if (!Number.isFinite(atM)) return []
  const at = placeAlong(frame.path, atM)
  const { x, y } = directionAlong(frame.path, atM)
  const outward = atM < (frame.fromM + frame.toM) / 2 ? -1 : 1
  return [
    name === ''
      ? mark(frame, id, shape, atM, words.label)
      : mark(frame, id, shape, atM, words.labelNamed ?? words.label, { name }),
    {
      kind: 'text',
      id: `${id}-name`,
      label: null,
      certainty: 'measured',
      at,
      offsetPx: [outward * 22 * x, outward * 22 * y],
      text: name === '' ? { key: words.name, values: {} } : { key: 'label_sketch_named', values: { name } },
      size: 'small',
      anchor: 'middle',
    },
  ]
}

function mark(
  frame: SketchFrame,
  id: string,
  shape: DrawMark['shape'],
  atM: number,
  key: string,
  values: Reason['values'] = {},
): DrawMark {
  const { x, y } = directionAlong(frame.path, atM)
  return {
    kind: 'mark',
    id,
    label: { key, values: { ...values, at_m: atM } },
    certainty: 'measured',
    at: placeAlong(frame.path, atM),
    shape,
    turnRad: Math.atan2(y, x),
  }
}
