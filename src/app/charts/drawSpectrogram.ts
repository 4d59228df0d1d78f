import type { Ring } from '../../../shared/bubbles/ring'
import type { PassBand } from '../../../shared/listen/passBand'
import type { SpectrogramPicture } from '../../worker/protocol'
import { frequencyTicks, tickText } from './frequencyTicks'
import type { Inks } from './useInks'
import { waterTable } from './waterTable'

export interface SpectrogramScene {
  readonly picture: SpectrogramPicture
  readonly rings: readonly Ring[]
  readonly durationS: number
  readonly limits: PassBand
  /** What is played; the rest is covered. */
  readonly passBand: PassBand | null
  readonly inks: Inks
}

/** Where the picture lies on its canvas, CSS pixels. */
export const PLOT = { left: 52, top: 12, right: 12, bottom: 48 } as const

const TEXT_PX = 16

/**
 * The sound of a clip as one small picture, a pixel a column and a row, to be stretched by whoever draws it.
 *
 * @returns `null` for a clip too short to have one.
 */
export function spectrogramBitmap(picture: SpectrogramPicture, look: 'light' | 'dark'): HTMLCanvasElement | null {
  const { shades, columnCount, rowCount } = picture
  if (columnCount === 0) return null
  const table = waterTable(look)
  const image = new ImageData(columnCount, rowCount)
  for (let i = 0; i < shades.length; i++) {
    const shade = shades[i]! * 3
    image.data[4 * i] = table[shade]!
    image.data[4 * i + 1] = table[shade + 1]!
    image.data[4 * i + 2] = table[shade + 2]!
    image.data[4 * i + 3] = 255
  }
  const bitmap = document.createElement('canvas')
  bitmap.width = columnCount
  bitmap.height = rowCount
  bitmap.getContext('2d')!.putImageData(image, 0, 0)
  return bitmap
}

/** Draws the picture with its axes, the rings as small open marks, and what is not played covered. */
export function drawSpectrogram(
  canvas: HTMLCanvasElement,
  bitmap: HTMLCanvasElement | null,
  scene: SpectrogramScene,
): void {
  const ctx = canvas.getContext('2d')!
  const scale = window.devicePixelRatio
  const { clientWidth: width, clientHeight: height } = canvas
  canvas.width = Math.round(width * scale)
  canvas.height = Math.round(height * scale)
  ctx.scale(scale, scale)
  const area = {
    left: PLOT.left,
    top: PLOT.top,
    width: width - PLOT.left - PLOT.right,
    height: height - PLOT.top - PLOT.bottom,
  }
  if (bitmap !== null) drawBitmap(ctx, bitmap, area, scene)
  const yOf = (hz: number) => area.top + area.height * (1 - octaveShare(hz, scene.limits))
  const xOf = (timeS: number) => area.left + area.width * (timeS / scene.durationS)
  coverUnplayed(ctx, area, yOf, scene)
  drawRings(ctx, { xOf, yOf }, scene)
  drawAxes(ctx, area, { xOf, yOf }, scene)
}

interface Area {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

interface Places {
  readonly xOf: (timeS: number) => number
  readonly yOf: (hz: number) => number
}

function octaveShare(hz: number, { lowHz, highHz }: PassBand): number {
  return Math.log(hz / lowHz) / Math.log(highHz / lowHz)
}

/** Columns reach from half a column before their middle to half a column after. */
function drawBitmap(
  ctx: CanvasRenderingContext2D,
  bitmap: HTMLCanvasElement,
  area: Area,
  scene: SpectrogramScene,
): void {
  const { timesS } = scene.picture
  const stepS = timesS.length > 1 ? (timesS.at(-1)! - timesS[0]!) / (timesS.length - 1) : scene.durationS
  const perS = area.width / scene.durationS
  const left = area.left + (timesS[0]! - stepS / 2) * perS
  ctx.save()
  ctx.beginPath()
  ctx.rect(area.left, area.top, area.width, area.height)
  ctx.clip()
  ctx.fillStyle = scene.inks.paper
  ctx.fillRect(area.left, area.top, area.width, area.height)
  ctx.imageSmoothingEnabled = true
  ctx.drawImage(bitmap, left, area.top, timesS.length * stepS * perS, area.height)
  ctx.restore()
}

function coverUnplayed(
  ctx: CanvasRenderingContext2D,
  area: Area,
  yOf: (hz: number) => number,
  scene: SpectrogramScene,
): void {
  if (scene.passBand === null) return
  const top = yOf(scene.passBand.highHz)
  const bottom = yOf(scene.passBand.lowHz)
  ctx.save()
  ctx.globalAlpha = 0.72
  ctx.fillStyle = scene.inks.sheet
  ctx.fillRect(area.left, area.top, area.width, top - area.top)
  ctx.fillRect(area.left, bottom, area.width, area.top + area.height - bottom)
  ctx.restore()
}

function drawRings(
  ctx: CanvasRenderingContext2D,
  { xOf, yOf }: Places,
  { rings, inks, limits }: SpectrogramScene,
): void {
  ctx.save()
  for (const { timeS, pitchHz } of rings) {
    if (pitchHz < limits.lowHz || pitchHz > limits.highHz) continue
    ctx.beginPath()
    ctx.arc(xOf(timeS), yOf(pitchHz), 3.5, 0, 2 * Math.PI)
    ctx.lineWidth = 3.5
    ctx.strokeStyle = inks.sheet
    ctx.stroke()
    ctx.lineWidth = 1.25
    ctx.strokeStyle = inks.ink
    ctx.stroke()
  }
  ctx.restore()
}

function drawAxes(ctx: CanvasRenderingContext2D, area: Area, { xOf, yOf }: Places, scene: SpectrogramScene): void {
  const { inks, limits, durationS } = scene
  ctx.save()
  ctx.font = `${TEXT_PX}px ${inks.letters}`
  ctx.fillStyle = inks.soft
  ctx.strokeStyle = inks.rule
  ctx.lineWidth = 1
  ctx.strokeRect(area.left, area.top, area.width, area.height)
  ctx.textAlign = 'right'
  ctx.textBaseline = 'middle'
  for (const hz of frequencyTicks(limits, area.height, () => 24)) {
    line(ctx, [area.left - 5, yOf(hz)], [area.left, yOf(hz)])
    ctx.fillText(tickText(hz), area.left - 8, yOf(hz))
  }
  ctx.textAlign = 'center'
  ctx.textBaseline = 'top'
  const stepS = timeStep(durationS, area.width)
  for (let timeS = 0; timeS <= durationS + 1e-6; timeS += stepS) {
    const foot = area.top + area.height
    line(ctx, [xOf(timeS), foot], [xOf(timeS), foot + 5])
    ctx.fillText(String(Number(timeS.toFixed(1))), xOf(timeS), foot + 8)
  }
  ctx.restore()
}

function line(ctx: CanvasRenderingContext2D, from: readonly [number, number], to: readonly [number, number]): void {
  ctx.beginPath()
  ctx.moveTo(...from)
  ctx.lineTo(...to)
  ctx.stroke()
}

/** Round steps, at least 56 pixels apart, s. */
function timeStep(durationS: number, width: number): number {
  const steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600]
  return steps.find((step) => (step / durationS) * width >= 56) ?? durationS
}
