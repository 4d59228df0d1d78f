import { describe, expect, it } from 'vitest'
import { waterTable } from '../../../../src/app/charts/waterTable'

/** Relative luminance by WCAG 2.2. */
function luminance(table: Uint8Array, shade: number): number {
  const [r, g, b] = [0, 1, 2].map((c) => {
    const x = table[shade * 3 + c]! / 255
    return x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!
}

const luminances = (look: 'light' | 'dark') => {
  const table = waterTable(look)
  return Array.from({ length: 256 }, (_, shade) => luminance(table, shade))
}

describe('the colours of sound', () => {
  it('get darker shade by shade on light ground, so that they read the same in grey', () => {
    const all = luminances('light')
    expect(all.slice(1).every((each, i) => each <= all[i]!)).toBe(true)
    expect(all.slice(8).every((each, i) => each <= all[i]!)).toBe(true)
  })

  it('get paler shade by shade on dark ground', () => {
    const all = luminances('dark')
    expect(all.slice(1).every((each, i) => each >= all[i]!)).toBe(true)
    expect(all.slice(8).every((each, i) => each >= all[i]!)).toBe(true)
  })

  it('are of one hue: green and blue lie together, red below them', () => {
    const table = waterTable('light')
    for (let shade = 0; shade < 256; shade++) {
      const [r, g, b] = [table[shade * 3]!, table[shade * 3 + 1]!, table[shade * 3 + 2]!]
      expect(r).toBeLessThan(Math.min(g, b))
      expect(Math.abs(g - b)).toBeLessThanOrEqual(12)
    }
  })

  it('reach from near the paper to near the ink', () => {
    const all = luminances('light')
    expect(new Set(all).size).toBeGreaterThan(200)
    expect((all[0]! + 0.05) / (all[255]! + 0.05)).toBeGreaterThan(12)
  })
})
