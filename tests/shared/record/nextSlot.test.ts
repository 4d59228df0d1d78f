import { describe, expect, it } from 'vitest'
import type { JobClip } from '../../../shared/job/job'
import { nextSlot, slotAgain, slotAt } from '../../../shared/record/nextSlot'
import { pointState } from '../../../shared/record/pointState'
import { recordedClip } from '../../../shared/record/recordedClip'
import { freeSweepName, recordInto, sweepSoFar } from '../../../shared/record/recordInto'
import type { ListenWay, Slot } from '../../../shared/record/slot'
import { FIRST_LINE, RECORDING } from '../../support/recordedJob'

const POINTS = [1, 2, 3, 4].map((point) => ({ point, alongM: point - 1, offsetM: 0 }))
const SOUND = { sha256: 'a'.repeat(64), bytes: 44 }

function clipAt(slot: Slot, timeS: number, taken: readonly JobClip[] = []): JobClip {
  const takenFiles = new Set(taken.map(({ row }) => row.file))
  return recordedClip({ slot, sweep: '1', sound: SOUND, recording: RECORDING, contact: 'spike', timeS, takenFiles })
}

/** What is recorded, in order, when the app's suggestion is always followed; `first` is the point begun at. */
function walk(way: ListenWay, first?: number): string[] {
  let clips: JobClip[] = []
  const chosen = POINTS.find(({ point }) => point === first)
  const soFar = () => ({ clips, removed: [] })
  let slot = chosen ? slotAt(chosen, way, soFar()) : nextSlot(POINTS, way, soFar(), null)
  const said: string[] = []
  while (slot !== null && said.length < 30) {
    said.push(`${slot.point}${slot.air === 'on' ? '+' : '-'}${slot.take}${slot.isReference ? ' again' : ''}`)
    clips = [...clips, clipAt(slot, 100 + said.length, clips)]
    slot = nextSlot(POINTS, way, soFar(), slot)
  }
  return said
}

describe('what is recorded next', () => {
  it('is point after point, and the first once more at the end', () => {
    expect(walk('on')).toEqual(['1+1', '2+1', '3+1', '4+1', '1+2 again'])
  })

  it('is air on and air off without lifting, as one take, where that was chosen', () => {
    expect(walk('both')).toEqual(['1+1', '1-1', '2+1', '2-1', '3+1', '3-1', '4+1', '4-1', '1+2 again', '1-2 again'])
  })

  it('is all with the air on, then all with it off from where one stands, each a setting-down of its own', () => {
    expect(walk('passes').slice(0, 8)).toEqual(['1+1', '2+1', '3+1', '4+1', '4-2', '3-2', '2-2', '1-2'])
  })

  it('goes on from wherever one began, to the nearest that is missing', () => {
    expect(walk('on', 3)).toEqual(['3+1', '4+1', '2+1', '1+1', '3+2 again'])
  })

  it('is nothing without points', () => {
    expect(nextSlot([], 'both', { clips: [], removed: [] }, null)).toBeNull()
  })
})

describe('a retake', () => {
  const first = slotAt(POINTS[1]!, 'both', { clips: [], removed: [] })
  const on = clipAt(first, 100)
  const off = clipAt({ ...first, air: 'off', staysPut: true }, 110)

  it('is the next take, set down anew, with the air on first where both are wanted', () => {
    const again = slotAgain({ ...first, air: 'off', staysPut: true }, 'both', { clips: [on, off], removed: [] })
    expect(again).toMatchObject({ point: 2, air: 'on', take: 2, staysPut: false })
    expect(slotAgain(first, 'on', { clips: [on], removed: [] })).toMatchObject({ air: 'on', take: 2 })
  })

  it('does not take the number of a clip that was taken out: that one may come back', () => {
    expect(slotAgain(first, 'on', { clips: [], removed: [on] }).take).toBe(2)
  })
})

describe('a recorded clip', () => {
  const slot = slotAt(POINTS[1]!, 'both', { clips: [], removed: [] })

  it('stands in the sweep as a row of a sheet does, its halves sharing a setting-down', () => {
    const { row, problems, recording } = clipAt(slot, 100)
    expect(row).toEqual({
      point: 2,
      alongM: 1,
      file: '02-on.wav',
      air: 'on',
      take: 1,
      sharedTake: true,
      sweep: '1',
      offsetM: 0,
      timeS: 100,
      contact: 'spike',
      airKpa: null,
      note: '',
      unknown: {},
    })
    expect([problems, recording]).toEqual([[], RECORDING])
  })

  it('has a name of its own among the clips of its line', () => {
    const [a, b] = [clipAt(slot, 1), clipAt({ ...slot, take: 2 }, 2)]
    const c = clipAt(slot, 3, [a])
    expect([a, b, c].map(({ row }) => row.file)).toEqual(['02-on.wav', '02-on-take2.wav', '02-on-2.wav'])
    const other = recordedClip({
      slot,
      sweep: 'fine, by the pump',
      sound: SOUND,
      recording: RECORDING,
      contact: null,
      timeS: 4,
      takenFiles: new Set(),
    })
    expect(other.row.file).toBe('sweep-fine-by-the-pump/02-on.wav')
  })
})

describe('a point', () => {
  const slot = slotAt(POINTS[1]!, 'both', { clips: [], removed: [] })
  const clips = [clipAt(slot, 1)]

  it('is done when the clips that are wanted there are there', () => {
    expect(pointState([], 2, 'on')).toBe('open')
    expect(pointState(clips, 2, 'on')).toBe('done')
    expect(pointState(clips, 2, 'both')).toBe('half')
    expect(pointState([...clips, clipAt({ ...slot, air: 'off' }, 2)], 2, 'both')).toBe('done')
  })
})

describe('the sweep that recordings join', () => {
  const clip = clipAt(slotAt(POINTS[0]!, 'on', { clips: [], removed: [] }), 1)
  const imported = { ...clip, recording: undefined } as unknown as JobClip
  const sweep = (name: string, ...clips: JobClip[]) => ({ id: name, name, clips, problems: [] })

  it('is the last one recorded here, and never one that was imported', () => {
    const sweeps = [sweep('1', clip), sweep('2', clip), sweep('3', imported)]
    expect(recordInto({ ...FIRST_LINE, sweeps })).toBe('2')
    expect(recordInto({ ...FIRST_LINE, sweeps: [sweep('1', imported)] })).toBe('2')
    expect(recordInto(FIRST_LINE)).toBe('1')
  })

  it('is new under a name that none has, nor had', () => {
    expect(freeSweepName([sweep('1'), sweep('3')], [{ ...clip, row: { ...clip.row, sweep: '2' } }])).toBe('4')
    expect(sweepSoFar({ ...FIRST_LINE, removedClips: [clip] }, '1')).toEqual({ clips: [], removed: [clip] })
  })
})
