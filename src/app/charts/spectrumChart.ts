import {
  Chart,
  type ChartConfiguration,
  type ChartDataset,
  LinearScale,
  LineController,
  LineElement,
  LogarithmicScale,
  type Plugin,
  PointElement,
} from 'chart.js'
import type { PassBand } from '../../../shared/listen/passBand'
import { frequencyTicks, tickText } from './frequencyTicks'
import { LINE_DASHES, type LineRole } from './lineDashes'
import type { Inks } from './useInks'

Chart.register(LineController, LineElement, PointElement, LogarithmicScale, LinearScale)

export interface SpectrumLine {
  readonly role: LineRole
  /** Frequency in Hz and level in dB; `null` breaks the line. */
  readonly places: readonly { readonly x: number; readonly y: number | null }[]
}

export interface SpectrumPicture {
  readonly lines: readonly SpectrumLine[]
  /** Ranges that tell something, with what is written into them. */
  readonly telling: readonly (PassBand & { readonly words: string })[]
  readonly passBand: PassBand | null
  readonly cursorHz: number | null
  readonly view: PassBand
  /** Levels of bands: a step from edge to edge. */
  readonly stepped: boolean
  readonly levelsWords: string
}

/** A spectrum on a canvas. */
export interface SpectrumChart {
  readonly show: (picture: SpectrumPicture, inks: Inks) => void
  /** Frequency under a place on the screen, held within the axis. */
  readonly hzAt: (clientX: number) => number
  /** Where a frequency is on the screen. */
  readonly clientXOf: (hz: number) => number
  readonly close: () => void
}

const TEXT_PX = 16

/** What the level axis takes of the width, about, CSS pixels. */
const AXIS_PX = 78

/** Of a number at the size of the text, its distance from the next one included, CSS pixels. */
const roomPx = (text: string) => 9.5 * text.length + 6

/** Levels shown below the loudest line's top, at most, dB: what lies deeper is the recorder's own. */
const DEEPEST_DB = 75

type Line = Chart<'line', { x: number; y: number | null }[]>

export function makeSpectrumChart(canvas: HTMLCanvasElement): SpectrumChart {
  let shown: { picture: SpectrumPicture; inks: Inks } | null = null
  let chart: Line | null = null
  const marks: Plugin<'line'> = {
    id: 'marks',
    beforeDatasetsDraw: (drawn) => void (shown && drawTelling(drawn, shown.picture, shown.inks)),
    afterDatasetsDraw: (drawn) => {
      if (shown === null) return
      drawPassBand(drawn, shown.picture, shown.inks)
      drawCursor(drawn, shown.picture, shown.inks)
    },
  }
  const scaleX = () => chart!.scales.x!
  return {
    show: (picture, inks) => {
      const before = shown
      shown = { picture, inks }
      if (chart !== null && before !== null && before.inks === inks && haveSameAxes(before.picture, picture)) {
        chart.draw()
        return
      }
      const { data, options } = configuration(picture, inks)
      if (chart === null) {
        chart = new Chart(canvas, { type: 'line', data, options: options!, plugins: [marks] })
        return
      }
      chart.data = data
      chart.options = options!
      chart.update('none')
    },
    hzAt: (clientX) => {
      const { left, right } = scaleX()
      const x = clientX - canvas.getBoundingClientRect().left
      return scaleX().getValueForPixel(Math.min(right, Math.max(left, x)))!
    },
    clientXOf: (hz) => canvas.getBoundingClientRect().left + scaleX().getPixelForValue(hz),
    close: () => chart?.destroy(),
  }
}

/** True when only what is drawn over the lines is another. */
function haveSameAxes(a: SpectrumPicture, b: SpectrumPicture): boolean {
  return a.lines === b.lines && a.view === b.view && a.stepped === b.stepped && a.levelsWords === b.levelsWords
}

function configuration(picture: SpectrumPicture, inks: Inks) {
  const order: readonly LineRole[] = ['on', 'off', 'after', 'before'] // the first lie on top
  const lines = [...picture.lines].sort((a, b) => order.indexOf(a.role) - order.indexOf(b.role))
  const [bottomDb, topDb] = levelRange(picture)
  const grid = { color: inks.hair, tickColor: inks.hair }
  const font = { size: TEXT_PX, family: inks.letters }
  return {
    data: { datasets: lines.map((line) => dataset(line, picture.stepped, inks)) },
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      parsing: false,
      normalized: true,
      events: [],
      scales: {
        x: {
          type: 'logarithmic',
          min: picture.view.lowHz,
          max: picture.view.highHz,
          grid,
          border: { color: inks.rule },
          ticks: {
            color: inks.soft,
            font,
            callback: (hz) => tickText(Number(hz)),
            maxRotation: 0,
            autoSkip: false,
          },
          afterBuildTicks: (scale) => {
            scale.ticks = frequencyTicks(picture.view, scale.chart.width - AXIS_PX, roomPx).map((value) => ({ value }))
          },
        },
        y: {
          type: 'linear',
          min: bottomDb,
          max: topDb,
          grid,
          border: { color: inks.rule },
          title: { display: true, text: picture.levelsWords, color: inks.soft, font },
          ticks: { color: inks.soft, font, stepSize: 20 },
        },
      },
    } satisfies ChartConfiguration<'line'>['options'],
  } satisfies Partial<ChartConfiguration<'line', { x: number; y: number | null }[]>>
}

function dataset({ role, places }: SpectrumLine, stepped: boolean, inks: Inks) {
  const isOwn = role === 'on' || role === 'off'
  return {
    data: [...places],
    borderColor: isOwn ? inks.ink : inks.soft,
    borderWidth: role === 'on' ? 2.5 : 1.75,
    borderDash: [...LINE_DASHES[role]],
    pointRadius: 0,
    stepped: stepped ? 'before' : false,
    spanGaps: false,
  } satisfies ChartDataset<'line', { x: number; y: number | null }[]>
}

/** Round limits that hold what is in view, the deepest left out. */
function levelRange({ lines, view }: SpectrumPicture): [number, number] {
  let top = Number.NEGATIVE_INFINITY
  let bottom = Number.POSITIVE_INFINITY
  for (const { places } of lines) {
    for (const { x, y } of places) {
      if (y === null || x < view.lowHz || x > view.highHz) continue
      top = Math.max(top, y)
      bottom = Math.min(bottom, y)
    }
  }
  if (top === Number.NEGATIVE_INFINITY) return [-120, -20]
  const highest = Math.ceil((top + 12) / 10) * 10 // room for what is written into the telling ranges
  return [Math.max(Math.floor(bottom / 10) * 10, highest - DEEPEST_DB - 15), highest]
}

function drawTelling(chart: Chart<'line'>, { telling }: SpectrumPicture, inks: Inks): void {
  const { ctx, chartArea } = chart
  for (const { lowHz, highHz, words } of telling) {
    const [left, right] = pixels(chart, lowHz, highHz)
    if (right <= left) continue
    ctx.save()
    ctx.fillStyle = inks.waterPale
    ctx.fillRect(left, chartArea.top, right - left, chartArea.bottom - chartArea.top)
    ctx.fillStyle = inks.water
    ctx.fillRect(left, chartArea.top, right - left, 4)
    ctx.font = `600 ${TEXT_PX}px ${inks.letters}`
    if (ctx.measureText(words).width < right - left - 4) {
      ctx.textAlign = 'center'
      ctx.textBaseline = 'top'
      ctx.fillText(words, (left + right) / 2, chartArea.top + 8)
    }
    ctx.restore()
  }
}

/** What is not let through to the ear is covered; the edges are there to be taken hold of. */
function drawPassBand(chart: Chart<'line'>, { passBand }: SpectrumPicture, inks: Inks): void {
  if (passBand === null) return
  const { ctx, chartArea } = chart
  const { left: first, right: last, top, bottom } = chartArea
  const [left, right] = pixels(chart, passBand.lowHz, passBand.highHz)
  ctx.save()
  ctx.globalAlpha = 0.72
  ctx.fillStyle = inks.sheet
  ctx.fillRect(first, top, Math.max(0, left - first), bottom - top)
  ctx.fillRect(right, top, Math.max(0, last - right), bottom - top)
  ctx.globalAlpha = 1
  ctx.strokeStyle = inks.ink
  ctx.fillStyle = inks.ink
  ctx.lineWidth = 2
  for (const x of [left, right]) {
    if (x <= first || x >= last) continue
    ctx.beginPath()
    ctx.moveTo(x, top)
    ctx.lineTo(x, bottom)
    ctx.stroke()
    ctx.beginPath()
    ctx.roundRect(x - 6, (top + bottom) / 2 - 16, 12, 32, 5)
    ctx.fill()
  }
  ctx.restore()
}

function drawCursor(chart: Chart<'line'>, { cursorHz, view, lines }: SpectrumPicture, inks: Inks): void {
  if (cursorHz === null || cursorHz < view.lowHz || cursorHz > view.highHz) return
  const { ctx, chartArea, scales } = chart
  const x = scales.x!.getPixelForValue(cursorHz)
  ctx.save()
  ctx.strokeStyle = inks.ink
  ctx.lineWidth = 1
  ctx.beginPath()
  ctx.moveTo(x, chartArea.top)
  ctx.lineTo(x, chartArea.bottom)
  ctx.stroke()
  const on = lines.find(({ role }) => role === 'on')
  const place = on?.places.find((each) => each.x >= cursorHz)
  if (place?.y != null) {
    const y = scales.y!.getPixelForValue(place.y)
    if (y >= chartArea.top && y <= chartArea.bottom) {
      ctx.fillStyle = inks.sheet
      ctx.lineWidth = 2.5
      ctx.beginPath()
      ctx.arc(x, y, 5, 0, 2 * Math.PI)
      ctx.fill()
      ctx.stroke()
    }
  }
  ctx.restore()
}

function pixels(chart: Chart<'line'>, lowHz: number, highHz: number): [number, number] {
  const { left, right } = chart.chartArea
  const at = (hz: number) => Math.min(right, Math.max(left, chart.scales.x!.getPixelForValue(hz)))
  return [at(lowHz), at(highHz)]
}
