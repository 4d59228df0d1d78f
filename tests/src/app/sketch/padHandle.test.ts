import { describe, expect, it } from 'vitest'
import { handleAt, type SpottedHandle } from '../../../../src/app/sketch/pad/padHandle'
import { isOnPad, padFit, padPanned, padZoomed } from '../../../../src/app/sketch/pad/padView'
import { toPlace, toSpot } from '../../../../src/app/sketch/sketchView'
import { close } from '../../../support/close'

const spotted = (id: string, ...grips: { x: number; y: number }[]): SpottedHandle => ({
  handle: { id, at: { xM: 0, yM: 0 }, label: id, shape: 'corner', canMove: true },
  grips,
})
const SIZE = { widthPx: 360, heightPx: 300 }
const rounding = { abs: 1e-9, because: 'rounding' }

describe('the handle under a thumb', () => {
  const handles = [spotted('a', { x: 100, y: 100 }), spotted('b', { x: 130, y: 100 }, { x: 130, y: 62 })]

  it('is the nearest one within half of 48 px and a little more, by any of its parts', () => {
    expect(handleAt(handles, { x: 112, y: 100 }, null)?.id).toBe('a')
    expect(handleAt(handles, { x: 118, y: 100 }, null)?.id).toBe('b')
    expect(handleAt(handles, { x: 130, y: 50 }, null)?.id).toBe('b')
    expect(handleAt(handles, { x: 100, y: 124 }, null)?.id).toBe('a')
    expect(handleAt(handles, { x: 100, y: 130 }, null)).toBeNull()
  })

  it('is the chosen one where two are about as near', () => {
    expect(handleAt(handles, { x: 117, y: 100 }, 'a')?.id).toBe('a')
  })
})

describe('the sheet', () => {
  it('fits what is on it, and a yard where nothing is', () => {
    const places = [
      { xM: -3, yM: 2 },
      { xM: 40, yM: 9 },
    ]
    const view = padFit(places, SIZE)
    expect(places.every((place) => isOnPad(view, SIZE, place))).toBe(true)
    expect(padFit([], SIZE).pxPerM).toBe(30)
  })

  it('keeps the spot under the fingers while it is zoomed, and goes along while it is moved', () => {
    const view = padFit([], SIZE)
    const spot = { x: 80, y: 220 }
    const place = toPlace(view, SIZE, spot)
    const nearer = toSpot(padZoomed(view, SIZE, 2.5, spot), SIZE, place)
    close(nearer.x, spot.x, rounding)
    close(nearer.y, spot.y, rounding)
    const moved = toSpot(padPanned(view, { x: 30, y: -12 }), SIZE, place)
    close(moved.x, spot.x + 30, rounding)
    close(moved.y, spot.y - 12, rounding)
  })
})
