import type { LocateAnswer } from '../locate/answer'
import type { DrawCommand, DrawPolygon } from './drawList'
import { ribbon } from './ribbon'
import { cornersBetween, type SketchFrame } from './sketchFrame'

/** How many steps the darkness has. Chosen: more cannot be told apart, and fewer show their edges. */
const STEPS = 12

/** Where the band is narrower than this share of its widest it is not drawn. Chosen: less than a third of a pixel. */
const LEAST_SHARE = 0.01

export interface Likelihood {
  readonly density: LocateAnswer['density']
  readonly verdict: LocateAnswer['verdict']
  /** Median distance between neighbouring points, m; `null` without two. */
  readonly spacingM: number | null
}

/**
 * The likelihood as a band centred on the pipe: as wide, and as dark, as the density is high.
 *
 *     half width = bandHalfM · density / max(highest density, 0.5 / spacing)
 *
 * So that little likelihood spread over the whole line stays thin, the full width needs half of the probability within one
 * spacing. What is not `located` is hatched over as well: a wide and a doubtful answer must not look like a sure one.
 *
 * @returns Pieces of one darkness each, from the start to the end; none for an empty density.
 */
export function likelihoodBand(frame: SketchFrame, { density, verdict, spacingM }: Likelihood): DrawPolygon[] {
  const fullPerM = fullDensityPerM(density.perM, spacingM)
  if (fullPerM === 0) return []
  const samples = withCorners(frame, density)
  const alongM = samples.map((sample) => sample.alongM)
  const shares = samples.map((sample) => sample.perM / fullPerM)
  return pieces(shares).map(({ first, last, step }, i) => ({
    kind: 'polygon',
    id: `band-${i}`,
    label: null,
    certainty: 'inferred',
    places: ribbon(
      frame.path,
      alongM.slice(first, last + 1),
      shares.slice(first, last + 1).map((share) => share * frame.bandHalfM),
    ),
    ink: 'likelihood',
    strength: (step + 0.5) / STEPS,
    hatch: verdict === 'located' ? 'none' : verdict === 'unsure' ? 'lines' : 'cross',
  }))
}

interface Sample {
  readonly alongM: number
  readonly perM: number
}

/** The density, with a sample of its own at each corner, where the band bends. */
function withCorners({ path }: SketchFrame, density: LocateAnswer['density']): Sample[] {
  const samples = density.alongM
    .map((alongM, i) => ({ alongM, perM: density.perM[i] ?? Number.NaN }))
    .filter(({ alongM, perM }) => Number.isFinite(alongM) && perM >= 0 && perM < Infinity)
  return samples.flatMap((sample, i) => {
    const before = samples[i - 1]
    const corners = before === undefined ? [] : cornersBetween(path, before.alongM, sample.alongM).slice(1, -1)
    const between = corners.map((alongM) => {
      const share = (alongM - before!.alongM) / (sample.alongM - before!.alongM)
      return { alongM, perM: before!.perM + share * (sample.perM - before!.perM) }
    })
    return [...between, sample]
  })
}

/** The density that is drawn at full width, 1/m; 0 when there is none. */
function fullDensityPerM(perM: readonly number[], spacingM: number | null): number {
  const highest = perM.reduce((high, each) => (each > high && each < Infinity ? each : high), 0)
  return highest === 0 ? 0 : Math.max(highest, spacingM !== null && spacingM > 0 ? 0.5 / spacingM : 0)
}

/** Runs of one darkness; neighbours share the sample between them, so that no gap shows. */
function pieces(shares: readonly number[]): { first: number; last: number; step: number }[] {
  const runs: { first: number; last: number; step: number }[] = []
  for (let i = 0; i + 1 < shares.length; i++) {
    const share = Math.max(shares[i]!, shares[i + 1]!)
    if (share < LEAST_SHARE) continue
    const step = Math.min(STEPS - 1, Math.floor(((shares[i]! + shares[i + 1]!) / 2) * STEPS))
    const run = runs.at(-1)
    if (run !== undefined && run.last === i && run.step === step) run.last = i + 1
    else runs.push({ first: i, last: i + 1, step })
  }
  return runs
}

/** The same band as one line for those who do not see it; `null` when nothing is drawn. */
export function bandWords(band: readonly DrawPolygon[], verdict: LocateAnswer['verdict']): DrawCommand['label'] {
  if (band.length === 0) return null
  return { key: verdict === 'no leak heard' ? 'sketch_band_little' : 'sketch_band', values: {} }
}
