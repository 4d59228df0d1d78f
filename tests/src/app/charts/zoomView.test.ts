import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { viewWith, zoomView } from '../../../../src/app/charts/zoomView'
import { close } from '../../../support/close'

const LIMITS = { lowHz: 60, highHz: 8000 }
const shareOf = (hz: number, view: typeof LIMITS) => Math.log(hz / view.lowHz) / Math.log(view.highHz / view.lowHz)

describe('a zoomed axis', () => {
  it('keeps the place it is zoomed about where it is', () => {
    const zoomed = zoomView(LIMITS, { factor: 2, aboutHz: 500 }, LIMITS)
    close(shareOf(500, zoomed), shareOf(500, LIMITS), { abs: 1e-9, because: 'closed form' })
    close(Math.log2(zoomed.highHz / zoomed.lowHz), Math.log2(8000 / 60) / 2, {
      abs: 1e-9,
      because: 'half as many octaves',
    })
  })

  it('never leaves its limits nor turns inside out (seed 5)', () => {
    const hz = fc.double({ min: 60, max: 8000, noNaN: true })
    const steps = fc.array(fc.tuple(fc.double({ min: 0.05, max: 20, noNaN: true }), hz), { maxLength: 12 })
    fc.assert(
      fc.property(steps, (all) => {
        const view = all.reduce((from, [factor, aboutHz]) => zoomView(from, { factor, aboutHz }, LIMITS), LIMITS)
        expect(view.lowHz).toBeGreaterThanOrEqual(60)
        expect(view.highHz).toBeLessThanOrEqual(8000)
        expect(Math.log2(view.highHz / view.lowHz)).toBeGreaterThan(0.33)
      }),
      { seed: 5 },
    )
  })

  it('comes back to the whole when zoomed out far enough', () => {
    const inside = zoomView(LIMITS, { factor: 4, aboutHz: 300 }, LIMITS)
    const whole = zoomView(inside, { factor: 0.01, aboutHz: 1000 }, LIMITS)
    close(whole.lowHz, 60, { rel: 1e-9, because: 'the limit' })
    close(whole.highHz, 8000, { rel: 1e-9, because: 'the limit' })
  })

  it('follows what is read', () => {
    const view = { lowHz: 500, highHz: 1000 }
    expect(viewWith(view, 700, LIMITS)).toBe(view)
    const up = viewWith(view, 2000, LIMITS)
    close(up.lowHz, 1000, { rel: 1e-9, because: 'an octave wide, as before' })
    close(up.highHz, 2000, { rel: 1e-9, because: 'just in view' })
    close(viewWith(view, 100, LIMITS).highHz, 200, { rel: 1e-9, because: 'the same downward' })
  })
})
