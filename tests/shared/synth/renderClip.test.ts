import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { clipQuality } from '../../../shared/audio/clipQuality'
import { drawYard } from '../../../shared/synth/drawYard'
import { type Family, familyNamed } from '../../../shared/synth/families'
import { EVIDENCE_BANDS } from '../../../shared/synth/grid'
import { renderClip } from '../../../shared/synth/renderClip'
import { type ClipPlan, SPOILS, type Spoil, type Yard } from '../../../shared/synth/yard'
import { close } from '../../support/close'
import { bandPowers } from './bandPowers'

const QUIET: Family = {
  ...familyNamed('plain')!,
  nuisanceShare: 0,
  inletShare: 0,
  toldPumpShare: 0,
  airOffAll: 1,
  airOffSome: 0,
}

const nearestOn = (yard: Yard): ClipPlan =>
  yard.clips
    .filter((clip) => clip.row.air === 'on')
    .reduce((a, b) =>
      Math.abs(b.spot.alongM - yard.truth.exitAlongM[0]!) < Math.abs(a.spot.alongM - yard.truth.exitAlongM[0]!) ? b : a,
    )

describe('rendered sound', () => {
  it('is the same every time', () => {
    const yard = drawYard(familyNamed('nuisances')!, 3)
    const digest = () => {
      const { channels } = renderClip(yard, yard.clips[2]!)
      return createHash('sha256').update(new Uint8Array(channels[0]!.buffer)).digest('hex')
    }
    expect(digest()).toBe(digest())
  })

  it.each([1, 2, 3, 4])('stands over the floor by what was solved for, seed %i', (seed) => {
    const yard = drawYard(QUIET, `level ${seed}`)
    const near = nearestOn(yard)
    const recorder = { ...near.recorder, sampleRateHz: 8000 }
    const on = { ...near, recorder, durationS: 60, floorDb: 0 }
    const off: ClipPlan = { ...on, row: { ...on.row, air: 'off' } }
    const band = EVIDENCE_BANDS.findIndex((b) => Math.abs(b.midHz - yard.truth.bestBandHz[0]!) < 1)
    const power = (plan: ClipPlan) => bandPowers(renderClip(yard, plan))[band]!
    const overDb = 10 * Math.log10(power(on) / power(off) - 1)
    close(overDb, yard.truth.overFloorDb[0]!, { abs: 1.5, because: 'a minute of unequal bubbles' })
  })

  it('comes at every rate and in every depth, with the same band levels', () => {
    const yard = drawYard(QUIET, 'rates')
    const plan = { ...nearestOn(yard), durationS: 10 }
    const [a, b] = [16000, 48000].map((sampleRateHz) =>
      bandPowers(renderClip(yard, { ...plan, recorder: { ...plan.recorder, sampleRateHz } })),
    )
    for (let i = 8; i < 18; i++)
      close(10 * Math.log10(a![i]! / b![i]!), 0, { abs: 0.8, because: 'other noise, same bubbles, 10 s' })
  })

  it.each<[Spoil, (samples: Float32Array) => boolean]>([
    ['clipped', (s) => s.filter((v) => Math.abs(v) === 1).length > 0.05 * s.length],
    ['short', (s) => s.length < 0.5 * 16000],
    ['silent', (s) => s.every((v) => v === 0)],
    ['faint', (s) => s.every((v) => Math.abs(v) < 1e-3)],
  ])('is spoilt as asked: %s', (spoil, isSpoilt) => {
    const yard = drawYard(QUIET, 'spoilt')
    const plan = nearestOn(yard)
    expect(isSpoilt(renderClip(yard, { ...plan, spoil }).channels[0]!)).toBe(true)
    expect(isSpoilt(renderClip(yard, plan).channels[0]!)).toBe(false)
  })
})

it('a clip handled throughout is far louder, all the time', () => {
  const yard = drawYard(QUIET, 'handled')
  const plan = nearestOn(yard)
  const tenths = (spoil: Spoil | null) => {
    const samples = renderClip(yard, { ...plan, spoil }).channels[0]!
    const length = Math.floor(samples.length / 10)
    return Array.from({ length: 10 }, (_, i) =>
      samples.subarray(i * length, (i + 1) * length).reduce((a, v) => a + v * v, 0),
    )
  }
  const calm = tenths(null)
  for (const [i, power] of tenths('handled').entries()) expect(power).toBeGreaterThan(5 * calm[i]!)
})

it.each(SPOILS)('a %s clip is named by whoever judges clips', (spoil) => {
  const named = { clipped: 'clipped', short: 'too_short', silent: 'silent', handled: 'knocked', faint: 'silent' }[spoil]
  for (let seed = 0; seed < 6; seed++) {
    const yard = drawYard(familyNamed('spoilt clips')!, `judged ${seed}`)
    const clip = renderClip(yard, { ...yard.clips[seed]!, spoil })
    const problem = clipQuality(clip.channels[0]!, clip.sampleRateHz, clip).find(({ key }) => key === named)
    expect(problem, `${spoil}, seed ${seed}`).toBeDefined()
    if (spoil !== 'handled') expect(problem!.severity).toBe('spoilt')
  }
})
