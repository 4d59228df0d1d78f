import { describe, expect, it } from 'vitest'
import { choleskyInPlace, choleskySolve } from '../../../shared/base/cholesky'
import { boundMeasurements } from '../../../shared/synth/boundMeasurements'
import { drawnEvidence } from '../../../shared/synth/drawnEvidence'
import { drawYard } from '../../../shared/synth/drawYard'
import { FAMILIES, type Family, familyNamed } from '../../../shared/synth/families'
import { informationBound, type Measurement } from '../../../shared/synth/informationBound'
import { positionBound } from '../../../shared/synth/positionBound'
import { whitened } from '../../../shared/synth/whitened'
import type { Yard } from '../../../shared/synth/yard'
import { close } from '../../support/close'

/** Levels A − 20·n·log10(r) at five points, r² = (x − x0)² + d², x0 = 0.3, d = 0.5, n = 2; parameters x0 and A. */
const levels = (sdDb: number, knowsA: boolean): Measurement[] =>
  [-2, -1, 0, 1, 2].map((x) => {
    const r2 = (x - 0.3) ** 2 + 0.5 ** 2
    const slope = ((10 * 2) / Math.LN10) * ((x - 0.3) / r2)
    return { at: knowsA ? [0] : [0, 1], slope: knowsA ? [slope] : [slope, 1], variance: sdDb ** 2 }
  })
const open = Number.POSITIVE_INFINITY

describe('the information bound', () => {
  it('is 0.2147 m for five points and a known level, 0.2166 m for an unknown one', () => {
    // Location from levels at known places: model and bound of Patwari et al. 2003, figures from the closed form. [Patwari2003]
    close(informationBound(levels(3, true), [open]), 0.2147, { abs: 5e-4, because: 'figures to four places' })
    close(informationBound(levels(3, false), [open, open]), 0.2166, { abs: 5e-4, because: 'figures to four places' })
  })

  it('doubles with the scatter', () => {
    const ratio = informationBound(levels(6, false), [open, open])! / informationBound(levels(3, false), [open, open])!
    close(ratio, 2, { rel: 1e-9, because: 'exact' })
  })

  it('is none where nothing is measured', () => {
    expect(informationBound([], [open, 1])).toBeNull()
  })
})

describe("the bound of a yard's place", () => {
  const plain = familyNamed('plain')!
  /** An inlet in each, and nothing that was not told of. */
  const told = { ...plain, inletShare: 1, nuisanceShare: 0 }
  const louder = (family: Family, db: number): Family => ({ ...family, overFloorDb: [db, db] })

  it('is smaller for a louder leak and larger for an estimate that knows less of the ground', () => {
    for (let seed = 0; seed < 2; seed++) {
      const faint = drawYard(louder(told, 8), seed)
      const loud = drawYard(louder(told, 28), seed)
      expect(positionBound(loud)!).toBeLessThan(positionBound(faint)!)
      expect(positionBound(loud, 2)!).toBeGreaterThan(positionBound(loud)!)
    }
  })

  it('is given for single leaks that sound steadily among sources that are told, and for nothing else', () => {
    const kept = (family: Family) =>
      family.name === 'nuisances' ? family : { ...family, inletShare: 1, nuisanceShare: 0 }
    const given = (name: string) => positionBound(drawYard(kept(familyNamed(name)!), 1)) !== null
    const without = ['slugs', 'riding gain', 'shifted exit', 'two leaks', 'no leak', 'moving air', 'nuisances']
    for (const { name } of FAMILIES) expect([name, given(name)]).toEqual([name, !without.includes(name)])
    const yard = drawYard(told, 1)
    expect(positionBound(yard)).not.toBeNull()
    expect(positionBound({ ...yard, told: { ...yard.told, airInletM: null } })).toBeNull()
  })

  it('is what an estimate reaches that knows the laws of the yard and reads its evidence', () => {
    // Linear least squares with the priors, at the truth: its errors over the bound are normal, so that the sum of their
    // squares over 12 yards lies from 3.1 to 28.3 in 99 of 100 cases (chi-squared with 12 degrees of freedom, any table).
    let sum = 0
    for (let seed = 1; seed <= 12; seed++) {
      sum += knowingErrorOverBound(drawYard(told, `oracle-${seed}`)) ** 2
    }
    expect(sum).toBeGreaterThan(3.1)
    expect(sum).toBeLessThan(28.3)
  })
})

/** Error of the best linear estimate of the place from drawn evidence, over the bound. */
function knowingErrorOverBound(yard: Yard): number {
  const { clips, priorSd } = boundMeasurements(yard, 0)!
  const size = priorSd.length
  const information = new Float64Array(size * size)
  const pull = new Float64Array(size)
  for (let i = 0; i < size; i++) information[i * size + i] = 1 / priorSd[i]! ** 2
  const told = levelsOf(yard)
  for (const { file, midHz, expectedDb, at, slopes, covariance } of clips) {
    const rows = slopes.map((slope, i) => [...slope, told(file, midHz[i]!) - expectedDb[i]!])
    for (const white of whitened(covariance, rows)) {
      const residual = white[at.length]!
      for (let a = 0; a < at.length; a++) {
        pull[at[a]!]! += white[a]! * residual
        for (let b = 0; b < at.length; b++) information[at[a]! * size + at[b]!]! += white[a]! * white[b]!
      }
    }
  }
  expect(choleskyInPlace(information, size)).not.toBeNull()
  choleskySolve(information, size, pull)
  return pull[0]! / positionBound(yard)!
}

/** Level of a clip's band with what the recorder's high-pass took given back, dB. */
function levelsOf(yard: Yard): (file: string, midHz: number) => number {
  const evidence = new Map(drawnEvidence(yard).map((drawn) => [drawn.row.file, drawn.evidence]))
  const cornerHz = new Map(yard.clips.map((plan) => [plan.row.file, plan.recorder.highPassHz]))
  return (file, midHz) => {
    const band = evidence.get(file)!.bands.find((each) => Math.abs(each.midHz / midHz - 1) < 1e-6)!
    return band.levelDbFs! + 10 * Math.log10(1 + ((cornerHz.get(file) ?? 0) / midHz) ** 4)
  }
}
