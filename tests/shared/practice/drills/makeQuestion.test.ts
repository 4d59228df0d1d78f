import { describe, expect, it } from 'vitest'
import { clipEvidence } from '../../../../shared/evidence/clipEvidence'
import { makeQuestion } from '../../../../shared/practice/drills/makeQuestion'
import { bestOverFloorDb } from '../../../../shared/practice/drills/mixedClips'
import { DRILLS, GAUGE_KINDS, OPTIONS, PLACE_POINTS, SOUND_KINDS } from '../../../../shared/practice/drills/question'
import { close } from '../../../support/close'

const SEEDS = Array.from({ length: 12 }, (_, i) => `yard ${i}`)
const asked =
  (drill: (typeof DRILLS)[number], levelDb = 12) =>
  (seed: string) =>
    makeQuestion({ drill, seed, levelDb })

describe('a question (seeds yard 0 to yard 11)', () => {
  it('is the same again from the same order, sample for sample', () => {
    for (const drill of DRILLS) expect(asked(drill)('again')).toEqual(asked(drill)('again'))
  })

  it('holds a clip at the level that was asked for, over the very floor it is heard in', () => {
    for (const levelDb of [0, 14]) {
      for (const { clips, truth } of SEEDS.map(asked('what', levelDb))) {
        const { clip, without } = clips[0]!
        const [whole, floor] = [clip.channels[0]!, without!.channels[0]!]
        const signal = whole.map((v, n) => v - floor[n]!)
        const because = `single precision, of ${truth}`
        close(bestOverFloorDb(signal, floor, clip.sampleRateHz), levelDb, { abs: 0.1, because })
      }
    }
  })

  it('never reaches the ceiling of the limiter, and is no louder for a leak than it must be', () => {
    for (const drill of ['leak', 'what', 'nearer'] as const) {
      for (const { clips } of SEEDS.slice(0, 4).map(asked(drill, 30))) {
        for (const { clip } of clips)
          expect(Math.max(...clip.channels[0]!.map(Math.abs))).toBeLessThan(10 ** (-12 / 20))
      }
    }
  })

  it('of leak or not is either, and its clip without a leak has no band that tells', () => {
    const questions = SEEDS.map(asked('leak', 18))
    expect(new Set(questions.map(({ truth }) => truth))).toEqual(new Set(OPTIONS.leak))
    for (const { truth, clips } of questions) expect(clips[0]!.telling.length > 0).toBe(truth === 'leak')
  })

  it('of two clips has the nearer one in either place, and its leak stands higher there', () => {
    const questions = SEEDS.map(asked('nearer'))
    expect(new Set(questions.map(({ truth }) => truth))).toEqual(new Set(OPTIONS.nearer))
    for (const { truth, clips } of questions) {
      const [a, b] = clips.map(({ clip, without }) => {
        const floor = without!.channels[0]!
        const signal = clip.channels[0]!.map((v, n) => v - floor[n]!)
        return bestOverFloorDb(signal, floor, clip.sampleRateHz)
      })
      expect(a! > b! ? 'A' : 'B').toBe(truth)
    }
  })

  it('of a kind of sound comes upon every kind', () => {
    const seeds = Array.from({ length: 30 }, (_, i) => `kind ${i}`)
    expect(new Set(seeds.map(asked('what')).map(({ truth }) => truth))).toEqual(new Set(SOUND_KINDS))
  })

  it('of a place has a leak within its points, where the machine finds it when it is loud', () => {
    const questions = SEEDS.slice(0, 3).map(asked('place', 24))
    for (const { truth, clips, machine } of questions) {
      expect(clips).toHaveLength(PLACE_POINTS)
      expect(Number(truth)).toBeGreaterThanOrEqual(1)
      expect(Number(truth)).toBeLessThanOrEqual(PLACE_POINTS)
      expect(machine!.right).toBe(true)
    }
  })

  it("has the machine's bubbling just as the evidence of the clip has it, which the benches print", () => {
    for (const { clips, machine } of SEEDS.slice(0, 3).map(asked('leak'))) {
      expect(machine!.bubbling).toBe(clipEvidence(clips[0]!.clip).bubbling)
    }
  })
})

describe('a gauge to be read (30 seeds)', () => {
  const holds = Array.from({ length: 30 }, (_, i) => asked('gauge', 18)(`hold ${i}`))
  const of = (kind: (typeof GAUGE_KINDS)[number]) => holds.filter(({ truth }) => truth === kind)
  const fall = ({ gauge }: (typeof holds)[number]) =>
    gauge!.test.readings[0]!.value - gauge!.test.readings.at(-1)!.value

  it('comes upon every kind', () => {
    for (const kind of GAUGE_KINDS) expect(of(kind).length).toBeGreaterThan(0)
  })

  it('shows each kind by its own sign, and by no other', () => {
    // 18 dB are eight steps of half a kilopascal.
    const because = 'rounded at both ends, and noise of the needle'
    for (const hold of [...of('leak'), ...of('weeping plug')]) close(fall(hold), 4, { abs: 1, because })
    for (const hold of of('warming')) close(Math.abs(fall(hold)), 4, { abs: 1, because })
    for (const hold of [...of('tight'), ...of('trapped air')]) close(fall(hold), 0, { abs: 0.5, because })
    for (const { truth, gauge } of holds) {
      const { test, fullLineKpa, thisLineKpa } = gauge!
      expect(test.startTemperatureC !== test.endTemperatureC).toBe(truth === 'warming')
      expect(test.fittings.some(({ state }) => state === 'weeping')).toBe(truth === 'weeping plug')
      expect(thisLineKpa < fullLineKpa / 5).toBe(truth === 'trapped air')
    }
  })

  it('is judged by the machine just as on the screen Pressure', () => {
    for (const { machine } of of('leak')) expect(machine).toMatchObject({ said: 'drops', right: true })
    for (const { machine } of of('trapped air')) expect(machine!.right).toBe(false)
  })
})
