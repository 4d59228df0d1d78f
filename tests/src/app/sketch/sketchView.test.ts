import { describe, expect, it } from 'vitest'
import { fitView, heightFor, panned, toPlace, toSpot, zoomed } from '../../../../src/app/sketch/sketchView'
import { close } from '../../../support/close'

const bounds = { lowXM: -1, highXM: 9, lowYM: 0, highYM: 4 }
const size = { widthPx: 400, heightPx: heightFor(bounds, 400) }
const fit = fitView(bounds, size)

describe('the view of a sketch', () => {
  it('shows all of it when fitted', () => {
    for (const [xM, yM] of [
      [-1, 0],
      [9, 4],
    ] as const) {
      const { x, y } = toSpot(fit, size, { xM, yM })
      expect(x).toBeGreaterThan(0)
      expect(x).toBeLessThan(size.widthPx)
      expect(y).toBeGreaterThan(0)
      expect(y).toBeLessThan(size.heightPx)
    }
  })

  it('takes a spot back to its place', () => {
    const place = toPlace(fit, size, toSpot(fit, size, { xM: 2.5, yM: 1.25 }))
    close(place.xM, 2.5, { abs: 1e-12, because: 'there and back' })
    close(place.yM, 1.25, { abs: 1e-12, because: 'there and back' })
  })

  it('grows about a spot that stays where it is', () => {
    const about = { x: 150, y: 100 }
    const before = toPlace(fit, size, about)
    const after = toPlace(zoomed(fit, fit, size, 2, about), size, about)
    close(after.xM, before.xM, { abs: 1e-9, because: 'the spot under the fingers' })
    close(after.yM, before.yM, { abs: 1e-9, because: 'the spot under the fingers' })
  })

  it('falls back into the fitted one when it would show less than that', () => {
    const larger = zoomed(fit, fit, size, 3, { x: 10, y: 10 })
    expect(zoomed(larger, fit, size, 0.2, { x: 10, y: 10 })).toBe(fit)
  })

  it('is not moved off the paper', () => {
    const larger = zoomed(fit, fit, size, 3, { x: 200, y: 100 })
    const moved = panned(larger, fit, size, { x: 1e6, y: -1e6 })
    const corner = toPlace(fit, size, { x: 0, y: size.heightPx })
    const seen = toPlace(moved, size, { x: 0, y: size.heightPx })
    close(seen.xM, corner.xM, { abs: 1e-9, because: 'the left edge of the fitted paper' })
    close(seen.yM, corner.yM, { abs: 1e-9, because: 'the lower edge of the fitted paper' })
  })

  it('is finite for a line that is a spot, and for one of a thousand kilometres', () => {
    for (const extentM of [0, 1e6]) {
      const odd = { lowXM: 0, highXM: extentM, lowYM: 0, highYM: 0 }
      const { pxPerM } = fitView(odd, { widthPx: 320, heightPx: heightFor(odd, 320) })
      expect(pxPerM).toBeGreaterThan(0)
      expect(pxPerM).toBeLessThan(Number.POSITIVE_INFINITY)
    }
  })
})
