import { expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { FLOOR_HABITS } from '../../../shared/locate/fitModel'
import { NoiseLearnt } from '../../../shared/locate/noiseLearnt'
import { close } from '../../support/close'

const BANDS = 7
const HABIT = FLOOR_HABITS[0]!

function learnt(sdDb: (band: number) => number, cells: number, sourceShare: number) {
  const random = new Random('noise learnt')
  const learning = new NoiseLearnt(BANDS)
  for (let b = 0; b < BANDS; b++)
    for (let i = 0; i < cells; i++) learning.note(b, random.normal(0, sdDb(b)), { sourceShare, isTold: false })
  return learning.noise(HABIT)
}

it('expects the same of every band before any cell was seen (rule 6)', () => {
  const { sourceSdDb, floorSdDb } = new NoiseLearnt(BANDS).noise(HABIT)
  expect([...sourceSdDb]).toEqual(new Array(BANDS).fill(1.5))
  expect([...floorSdDb]).toEqual(new Array(BANDS).fill(1.5))
})

it('learns each band by itself where there are many cells, a little more for what the fit spent (rule 6)', () => {
  const { sourceSdDb, floorSdDb } = learnt(() => 0.8, 2000, 0.9)
  for (const sd of sourceSdDb) close(sd, 0.8 * 1.25, { rel: 0.06, because: '2000 cells a band' })
  expect(floorSdDb[0]).toBe(1.5)
})

it('keeps a band in which countable bubbles scatter apart from the quiet ones (rule 6)', () => {
  const { sourceSdDb } = learnt((b) => (b === 3 ? 3 : 0.4), 12, 0.9)
  expect(sourceSdDb[3]).toBeGreaterThan(2 * sourceSdDb[0]!)
  expect(sourceSdDb[3]).toBeGreaterThan(sourceSdDb[2]!)
  expect(sourceSdDb[2]).toBeGreaterThan(sourceSdDb[1]!)
})

it('learns the floor from cells with little of a source, never of a told floor, and nothing between (rule 6)', () => {
  const { sourceSdDb, floorSdDb } = learnt(() => 0.5, 200, 0.1)
  for (const sd of floorSdDb) close(sd, 0.5 * 1.25, { rel: 0.2, because: '200 cells a band' })
  expect(sourceSdDb[0]).toBe(1.5)
  const told = new NoiseLearnt(BANDS)
  for (let i = 0; i < 50; i++) told.note(0, 5, { sourceShare: 0.1, isTold: true })
  for (let i = 0; i < 50; i++) told.note(0, 5, { sourceShare: 0.5, isTold: false })
  expect([...told.noise(HABIT).floorSdDb, ...told.noise(HABIT).sourceSdDb]).toEqual(new Array(2 * BANDS).fill(1.5))
})

it('is not carried off by a few cells that are far out, and stays within its limits (rule 6)', () => {
  const wild = learnt(() => 40, 50, 0.9)
  for (const sd of wild.sourceSdDb) expect(sd).toBeLessThanOrEqual(4)
  const still = learnt(() => 0, 500, 0.9)
  for (const sd of still.sourceSdDb) expect(sd).toBeGreaterThanOrEqual(0.3)
})
