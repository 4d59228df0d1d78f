import type { Opinion } from '../job/opinions'
import { type Agreement, agreement, type NamedPlace, placeOfOpinion } from './agreement'
import { latestOpinions } from './latestOpinions'
import { opinionDensity, type PlaceDensity, pooledDensity } from './pooledDensity'

/** Who names a place on a line: somebody who listened, or the machine. */
export interface Ear extends NamedPlace {
  /** As it is called on a sketch: A, B, ... */
  readonly letter: string
  /** `null`: the machine. */
  readonly opinion: Opinion | null
  /** The chance that the leak is in the window, 0 to 1. */
  readonly confidence: number
}

/** The machine's answer, as far as it is laid beside opinions. */
export interface MachinePlace extends NamedPlace {
  readonly confidence: number
  readonly density: PlaceDensity
}

/** All that name a place on one line, side by side. */
export interface JointPlaces {
  /** Persons in the order of their opinions, the machine last. */
  readonly ears: readonly Ear[]
  /** By the linear opinion pool, each weighed alike; `null` where nobody names a place. */
  readonly pooled: PlaceDensity | null
  readonly agreement: Agreement
}

/** Steps of the pooled density where the machine has none. Chosen: a tenth of a metre on a line of forty. */
const STEPS = 400

/**
 * Lays opinions and the machine's answer over one line.
 *
 * Of each person only the newest opinion of the line counts; the others stay in the job.
 *
 * @param machine `null`: it names no place, or has not answered.
 * @param points  Of the line, with their places.
 * @param rangeM  Where the leak can be, for a grid of its own; rising.
 */
export function jointPlaces(
  opinions: readonly Opinion[],
  machine: MachinePlace | null,
  points: readonly { readonly point: number; readonly alongM: number }[],
  rangeM: readonly [number, number],
): JointPlaces {
  const persons = latestOpinions(opinions).flatMap((opinion) => {
    const place = placeOfOpinion(opinion)
    return place === null ? [] : [{ ...place, opinion, confidence: opinion.confidence ?? 0 }]
  })
  const all = [...persons, ...(machine === null ? [] : [{ ...machine, opinion: null }])]
  const ears = all.map(({ alongM, windowM, opinion, confidence }, i) => ({
    letter: letterOf(i),
    alongM,
    windowM,
    opinion,
    confidence,
  }))
  const grid = machine === null || machine.density.alongM.length < 2 ? evenGrid(rangeM) : machine.density.alongM
  const densities = [
    ...persons.flatMap(({ opinion }) => opinionDensity(opinion, grid) ?? []),
    ...(machine !== null && machine.density.alongM === grid ? [machine.density] : []),
  ]
  return { ears, pooled: pooledDensity(densities), agreement: agreement(ears, points) }
}

function evenGrid([fromM, toM]: readonly [number, number]): number[] {
  return Array.from({ length: STEPS + 1 }, (_, i) => fromM + ((toM - fromM) * i) / STEPS)
}

/** A to Z, then AA, AB and so on. */
function letterOf(i: number): string {
  const last = String.fromCharCode(65 + (i % 26))
  return i < 26 ? last : letterOf(Math.floor(i / 26) - 1) + last
}
