import { describe, expect, it } from 'vitest'
import type { Line } from '../../../shared/line/line'
import { type ArrangeOptions, arrangeSketch } from '../../../shared/sketch/arrangeSketch'
import { lineSketch } from '../../../shared/sketch/lineSketch'
import { BENT, bareLine, pointsAt } from './sketches'

const LETTER_PX = 3

const YARD: Partial<Line> = {
  vertices: BENT,
  airInletM: -0.5,
  stretches: [{ fromM: 0, toM: 6, cover: 'pavers', depthM: null, digCostPerM: null }],
  noises: [{ atM: 10.3, kind: 'pump' }],
}

function arrange(pxPerM: number, points: ReturnType<typeof pointsAt>, told = YARD, chosenPoint: number | null = null) {
  const line = bareLine(told)
  const commands = lineSketch({ line, points, answer: null, chosenPoint, isConfirmed: false, pxPerM })
  const options: ArrangeOptions = {
    toSpot: ({ xM, yM }) => ({ x: 80 + xM * pxPerM, y: 300 - yM * pxPerM }),
    textWidthPx: ({ text }) => text.key.length * LETTER_PX,
    pegPx: 26,
    stemPx: 38,
    sheet: { widthPx: 900, heightPx: 400 },
    reserved: [],
  }
  return { ...arrangeSketch(commands, options), options }
}

const dense = pointsAt(Array.from({ length: 41 }, (_, i) => i / 4))

describe('pegs and letters on a sheet', () => {
  it('never lie over each other', () => {
    for (const pxPerM of [12, 30, 70]) {
      const { pegs, texts } = arrange(pxPerM, dense)
      const boxes = [
        ...pegs.filter(({ isShown }) => isShown).map(({ x, y }) => ({ x, y, halfX: 13, halfY: 13 })),
        ...texts.map(({ text, x, y }) => ({ x, y, halfX: (text.text.key.length * LETTER_PX) / 2, halfY: 8 })),
      ]
      expect(boxes.length).toBeGreaterThan(5)
      const pairs = boxes.flatMap((a, i) => boxes.slice(i + 1).map((b) => ({ a, b })))
      const over = pairs.filter(
        ({ a, b }) => Math.abs(a.x - b.x) < a.halfX + b.halfX && Math.abs(a.y - b.y) < a.halfY + b.halfY,
      )
      expect(over).toEqual([])
    }
  })

  it('stay on the sheet where they are letters', () => {
    const { texts, options } = arrange(70, dense)
    expect(texts.length).toBeGreaterThan(1)
    for (const { text, x, y } of texts) {
      const half = (text.text.key.length * LETTER_PX) / 2
      expect(x - half).toBeGreaterThanOrEqual(0)
      expect(x + half).toBeLessThanOrEqual(options.sheet.widthPx)
      expect(y).toBeGreaterThanOrEqual(8)
      expect(y).toBeLessThanOrEqual(options.sheet.heightPx - 8)
    }
  })

  it('are all there in their order, their feet in place, whether there is room for the square or not', () => {
    const { pegs, options } = arrange(12, dense)
    expect(pegs.map(({ peg }) => peg.point)).toEqual(dense.map(({ point }) => point))
    expect(pegs.map(({ foot }) => foot)).toEqual(pegs.map(({ peg }) => options.toSpot(peg.at)))
    expect(pegs.some(({ isShown }) => !isShown)).toBe(true)
  })

  it('show more squares the closer somebody looks', () => {
    const shown = [12, 30, 70, 120].map((pxPerM) => arrange(pxPerM, dense).pegs.filter((peg) => peg.isShown).length)
    expect(shown).toEqual([...shown].sort((a, b) => a - b))
    expect(shown.at(-1)).toBe(dense.length)
  })

  it('stand in two rows where one has no room for all and two have', () => {
    const vertices = [
      { xM: 0, yM: 0 },
      { xM: 6.35, yM: 0 },
      { xM: 6.35, yM: 4.05 },
      { xM: 9.35, yM: 4.05 },
    ]
    const everyMetre = pointsAt(Array.from({ length: 14 }, (_, i) => i))
    const stalksAt = (pxPerM: number) => {
      const { pegs } = arrange(pxPerM, everyMetre, { vertices, lengthM: 13.4 })
      expect(pegs.every(({ isShown }) => isShown)).toBe(true)
      return [...new Set(pegs.map(({ foot, x, y }) => Math.round(Math.hypot(x - foot.x, y - foot.y))))]
    }
    expect(stalksAt(21).sort()).toEqual([38, 68])
    expect(stalksAt(35)).toEqual([38])
  })

  it('have round feet only where those leave the pipe to be seen', () => {
    expect(arrange(30, dense).pegs.every(({ isCrowded }) => isCrowded)).toBe(true)
    expect(arrange(70, dense).pegs.some(({ isCrowded }) => isCrowded)).toBe(false)
  })

  it('always show the chosen peg', () => {
    for (const { point } of dense) {
      const chosen = arrange(12, dense, YARD, point).pegs.find(({ peg }) => peg.point === point)
      expect(chosen?.isShown).toBe(true)
    }
  })
})
