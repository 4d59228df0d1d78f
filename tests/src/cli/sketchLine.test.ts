import { describe, expect, it } from 'vitest'
import { type SketchedLine, sketchLine } from '../../../src/cli/sketchLine'

const places = Array.from({ length: 241 }, (_, i) => -1 + i * 0.05)
const peakAt = (centreM: number, widthM: number) => ({
  alongM: places,
  perM: places.map((place) => Math.exp(-0.5 * ((place - centreM) / widthM) ** 2)),
})
const line = (change: Partial<SketchedLine> = {}): SketchedLine => ({
  density: peakAt(5, 0.4),
  range: { fromM: 0, toM: 10 },
  points: Array.from({ length: 11 }, (_, i) => ({ point: i + 1, alongM: i })),
  windows: [[4.5, 5.5]],
  ...change,
})
const PLAIN = { width: 50, shades: false }

describe('the line in a row of text', () => {
  it('is darkest where the leak is likeliest, with points and window under it', () => {
    expect(sketchLine(line(), PLAIN)).toEqual([
      '--------------------:=%####%=::-------------------',
      '1    2    3    4    5    6    7    8    9    10  11',
      '                      [____]',
    ])
  })

  it('has shades on a terminal that can show them, and ASCII elsewhere', () => {
    expect(sketchLine(line(), { width: 50, shades: true }).join('')).toMatch(/░▒?▓█+▓▒?░/)
    expect(sketchLine(line(), PLAIN).join('')).toMatch(/^[\x20-\x7e]*$/)
  })

  it('shows a peak narrower than a cell', () => {
    expect(sketchLine(line({ density: peakAt(5, 0.02) }), { width: 10, shades: false })[0]).toContain('#')
  })

  it('reads the same mirrored when the line does', () => {
    const [row] = sketchLine(line({ density: peakAt(3, 0.4) }), PLAIN)
    const [mirrored] = sketchLine(line({ density: peakAt(7, 0.4) }), PLAIN)
    expect([...row!].reverse().join('').replaceAll(/[^#]/g, ' ').trim()).toBe(mirrored!.replaceAll(/[^#]/g, ' ').trim())
    expect(Math.abs(row!.indexOf('#') - (49 - mirrored!.lastIndexOf('#')))).toBeLessThanOrEqual(1)
  })

  it('goes past an end only where the leak may be there', () => {
    const [row] = sketchLine(line({ density: peakAt(10.5, 0.2) }), PLAIN)
    expect(row).toMatch(/^-+.*#/)
    expect(row!.length).toBe(50)
    expect(sketchLine(line({ density: peakAt(5, 0.4) }), PLAIN)[0]).not.toContain(' ')
  })

  it('leaves out numbers that would touch', () => {
    const [, pegs] = sketchLine(line(), { width: 12, shades: false })
    expect(pegs).toMatch(/^\d+(?: \d+)+$/)
  })

  it('is bare where nothing was heard', () => {
    const flat = { alongM: places, perM: places.map(() => 0) }
    expect(sketchLine(line({ density: flat, windows: [] }), PLAIN)[0]).toBe('-'.repeat(50))
    expect(sketchLine(line({ density: { alongM: [], perM: [] }, windows: [] }), PLAIN)[0]).toBe('-'.repeat(50))
  })
})
