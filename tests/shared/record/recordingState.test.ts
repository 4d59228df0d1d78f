import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  AIR_TURN_S,
  FIRST_RECORDING,
  nextRecording,
  type RecordingEvent,
  type RecordingState,
} from '../../../shared/record/recordingState'
import type { Slot } from '../../../shared/record/slot'

const SLOT: Slot = { point: 3, alongM: 2, offsetM: 0, air: 'on', take: 1, staysPut: false, isReference: false }
const OFF: Slot = { ...SLOT, air: 'off', staysPut: true }

const following = (state: RecordingState, ...events: RecordingEvent[]) => events.reduce(nextRecording, state)

/** The microphone heard for some seconds at this power, on its own clock: no other clock is asked. */
function hearing(state: RecordingState, seconds: number, power = 1e-6): RecordingState {
  let next = state
  for (let i = 1; i <= Math.round(seconds * 10); i++) {
    const block = { atS: state.nowS + i / 10, durationS: 0.1, power, peak: Math.sqrt(power) }
    next = nextRecording(next, { kind: 'heard', block })
  }
  return next
}

const open = following(FIRST_RECORDING, { kind: 'choose', slot: SLOT }, { kind: 'open' }, { kind: 'opened' })
const recording = hearing(following(hearing(open, 1), { kind: 'start' }), 1.1)

describe('recording a clip', () => {
  it('rests for a second after the tap, then records to its end, then is kept', () => {
    const tapped = following(hearing(open, 1), { kind: 'start' })
    expect(tapped.phase).toBe('settling')
    expect(hearing(tapped, 0.8).phase).toBe('settling')
    expect(recording.phase).toBe('recording')
    const half = following(recording, { kind: 'recorded', recordedS: 3, isWhole: false })
    expect([half.phase, half.recordedS]).toEqual(['recording', 3])
    const whole = following(half, { kind: 'recorded', recordedS: 6, isWhole: true })
    expect([whole.phase, whole.endedBy]).toEqual(['keeping', null])
    const kept = following(whole, { kind: 'kept', next: { ...SLOT, point: 4 } })
    expect([kept.phase, kept.slot?.point, kept.recordedS]).toEqual(['open', 4, 0])
  })

  it('is called off while it settles, and ends early while it records', () => {
    const tapped = following(open, { kind: 'start' })
    expect(following(tapped, { kind: 'stop' }).phase).toBe('open')
    const stopping = following(recording, { kind: 'stop' })
    expect([stopping.phase, stopping.endedBy]).toEqual(['recording', 'stopped'])
    const ended = following(stopping, { kind: 'recorded', recordedS: 1.3, isWhole: true })
    expect([ended.phase, ended.endedBy, ended.recordedS]).toEqual(['keeping', 'stopped', 1.3])
  })

  it('ends for the first reason that is told', () => {
    const cut = following(recording, { kind: 'cut', endedBy: 'hidden' }, { kind: 'stop' })
    expect(cut.endedBy).toBe('hidden')
    expect(following(cut, { kind: 'gone', endedBy: 'unplugged' }).endedBy).toBe('hidden')
  })

  it('keeps what it has when the microphone is unplugged, and needs one before the next', () => {
    const gone = following(recording, { kind: 'gone', endedBy: 'unplugged' })
    expect([gone.phase, gone.endedBy]).toEqual(['keeping', 'unplugged'])
    expect(following(hearing(open, 3), { kind: 'gone', endedBy: 'unplugged' }).phase).toBe('closed')
  })

  it('is not changed by anything while it is under way: point, length', () => {
    for (const event of [
      { kind: 'choose', slot: { ...SLOT, point: 9 } },
      { kind: 'lengthen', wantedS: 20 },
      { kind: 'start' },
      { kind: 'open' },
    ] as const) {
      expect(following(recording, event)).toBe(recording)
    }
  })

  it('does not begin without a point or a microphone', () => {
    expect(following(open, { kind: 'choose', slot: null }, { kind: 'start' }).phase).toBe('open')
    expect(following(FIRST_RECORDING, { kind: 'choose', slot: SLOT }, { kind: 'start' }).phase).toBe('closed')
  })

  it('never leaves its phases, and never is kept twice, whatever comes in whatever order (seed 3)', () => {
    const block = fc
      .record({ atS: fc.double({ min: 0, max: 100, noNaN: true }), power: fc.constantFrom(0, 1e-6, 1) })
      .map(({ atS, power }) => ({ atS, durationS: 0.1, power, peak: power }))
    const event: fc.Arbitrary<RecordingEvent> = fc.oneof(
      fc.constantFrom<RecordingEvent>(
        { kind: 'open' },
        { kind: 'opened' },
        { kind: 'start' },
        { kind: 'stop' },
        { kind: 'gone', endedBy: 'unplugged' },
        { kind: 'cut', endedBy: 'hidden' },
        { kind: 'recorded', recordedS: 1, isWhole: false },
        { kind: 'recorded', recordedS: 2, isWhole: true },
        { kind: 'kept', next: SLOT },
        { kind: 'kept', next: null },
        { kind: 'choose', slot: SLOT },
        { kind: 'handsFree', handsFree: true },
      ),
      block.map((heard): RecordingEvent => ({ kind: 'heard', block: heard })),
    )
    const MAY_FOLLOW: Record<RecordingState['phase'], readonly RecordingState['phase'][]> = {
      closed: ['opening'],
      opening: ['open', 'closed'],
      open: ['settling', 'closed'],
      settling: ['open', 'recording', 'closed'],
      recording: ['keeping'],
      keeping: ['open'],
    }
    fc.assert(
      fc.property(fc.array(event, { maxLength: 60 }), (events) => {
        let state = FIRST_RECORDING
        for (const each of events) {
          const next = nextRecording(state, each)
          if (next.phase !== state.phase) expect(MAY_FOLLOW[state.phase]).toContain(next.phase)
          state = next
        }
      }),
      { seed: 3 },
    )
  })
})

describe('hands free', () => {
  const free = following(open, { kind: 'handsFree', handsFree: true })

  it('begins once the level has settled', () => {
    expect(hearing(free, 1.9).phase).toBe('open')
    expect(hearing(free, 2.1).phase).toBe('settling')
    expect(hearing(hearing(free, 2.1), 1.1).phase).toBe('recording')
  })

  it('waits after a clip until the microphone was taken up and set down again', () => {
    const kept = following(
      hearing(hearing(free, 2.1), 1.1),
      { kind: 'recorded', recordedS: 6, isWhole: true },
      { kind: 'kept', next: { ...SLOT, point: 4 } },
    )
    const still = hearing(kept, 30)
    expect(still.phase).toBe('open')
    const lifted = hearing(still, 1, 1e-2)
    expect(lifted.phase).toBe('open')
    expect(hearing(lifted, 3.2).phase).not.toBe('open')
  })

  it('gives time to turn the air between the halves of a setting-down, and asks for no lifting', () => {
    const kept = following(
      hearing(hearing(free, 2.1), 1.1),
      { kind: 'recorded', recordedS: 6, isWhole: true },
      { kind: 'kept', next: OFF },
    )
    expect(hearing(kept, AIR_TURN_S - 0.5).phase).toBe('open')
    expect(hearing(kept, AIR_TURN_S + 0.5).phase).toBe('settling')
  })

  it('does not wait for ever for a level that never settles', () => {
    let state = free
    for (let second = 0; second < 5; second++) state = hearing(hearing(state, 1, 1e-6), 1, 1e-3)
    expect(state.phase).not.toBe('open')
  })

  it('ends when it is stopped by hand or the microphone goes', () => {
    const settling = hearing(free, 2.1)
    expect(following(settling, { kind: 'stop' }).handsFree).toBe(false)
    expect(following(free, { kind: 'gone', endedBy: 'unplugged' }).handsFree).toBe(false)
  })
})
