import { beforeEach, describe, expect, it } from 'vitest'
import type { PassBand } from '../../../../shared/listen/passBand'
import { spectrumPointers } from '../../../../src/app/sounds/spectrumPointers'

/** An element as far as pointers need one: what is listened for is called by the test. */
class FakeElement {
  readonly listeners = new Map<string, (event: unknown) => void>()
  addEventListener(type: string, listener: (event: unknown) => void) {
    this.listeners.set(type, listener)
  }
  removeEventListener(type: string) {
    this.listeners.delete(type)
  }
  setPointerCapture() {}
}

let element: FakeElement
let band: PassBand | null
let said: unknown[]
let leave: () => void

const send = (type: string, clientX: number, more: object = {}) =>
  element.listeners.get(type)!({
    type,
    clientX,
    pointerId: 1,
    button: 0,
    preventDefault: () => said.push('held'),
    ...more,
  })

beforeEach(() => {
  element = new FakeElement()
  band = null
  said = []
  leave = spectrumPointers(element as unknown as HTMLElement, {
    hzAt: (x) => x * 10,
    clientXOf: (hz) => hz / 10,
    band: () => band,
    onRead: (hz) => said.push(['read', hz]),
    onBand: (aHz, bHz) => said.push(['band', aHz, bHz]),
    onZoom: (factor, aboutHz) => said.push(['zoom', factor, aboutHz]),
  })
})

describe('fingers on a spectrum', () => {
  it('read it with a tap, even a shaky one', () => {
    send('pointerdown', 100)
    send('pointermove', 105)
    send('pointerup', 105)
    expect(said).toEqual([['read', 1050]])
  })

  it('choose a band by dragging across', () => {
    send('pointerdown', 100)
    send('pointermove', 150)
    send('pointerup', 150)
    expect(said).toEqual([['band', 1000, 1500]])
  })

  it('move the edge they take hold of', () => {
    band = { lowHz: 500, highHz: 2000 }
    send('pointerdown', 190)
    send('pointermove', 300)
    expect(said).toEqual([['band', 500, 3000]])
  })

  it('zoom with two fingers about their middle, and choose nothing', () => {
    send('pointerdown', 100)
    send('pointerdown', 200, { pointerId: 2 })
    send('pointermove', 300, { pointerId: 2 })
    send('pointerup', 300, { pointerId: 2 })
    send('pointerup', 100)
    expect(said).toEqual([['zoom', 2, 2000]])
  })

  it('leave the page to scroll by the wheel, and zoom by it with the control key', () => {
    send('wheel', 100, { deltaY: 50, ctrlKey: false, metaKey: false })
    expect(said).toEqual([])
    send('wheel', 100, { deltaY: -200, ctrlKey: true, metaKey: false })
    expect(said).toEqual(['held', ['zoom', Math.E, 1000]])
  })

  it('say nothing when the browser takes the touch for scrolling', () => {
    send('pointerdown', 100)
    send('pointercancel', 100)
    expect(said).toEqual([])
  })

  it('are let go in the end', () => {
    leave()
    expect(element.listeners.size).toBe(0)
  })
})
