import { clipEvidence } from '../../shared/evidence/clipEvidence'
import type { LocateAnswer } from '../../shared/locate/answer'
import { locate } from '../../shared/locate/locate'
import { type Mix, mixedSweep } from './mixes'

export interface MixResult {
  readonly mix: Mix
  readonly answer: LocateAnswer
  /** Best candidate against the truth, in spacings; `null` without one. */
  readonly errorSpacings: number | null
  readonly windowSpacings: number | null
}

/** A mixed sweep all the way from samples to the answer. */
export async function locateMix(seed: number, overFloorDb: number): Promise<MixResult> {
  const mix = await mixedSweep(seed, overFloorDb)
  const soundings = mix.clips.map(({ row, samples, sampleRateHz }) => ({
    row,
    evidence: clipEvidence({ channels: [samples], sampleRateHz, encoding: { kind: 'float', bits: 32 }, problems: [] }),
    problems: [],
  }))
  const answer = locate({ line: mix.line, soundings })
  const source = answer.sources[0]
  return {
    mix,
    answer,
    errorSpacings: source ? Math.abs(source.alongM - mix.leakAlongM) / mix.spacingM : null,
    windowSpacings: source ? (source.windowM[1] - source.windowM[0]) / mix.spacingM : null,
  }
}
