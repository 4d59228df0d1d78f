import type { Digging } from './digging'

/** What is planned of opening, in the form of the job's file; `readDigging` gives the same again. */
export function diggingJson({ marks, roundM, roundCostPerM }: Digging): Record<string, unknown> {
  return {
    marks: marks.map(({ id, name, place, tapes }) => ({
      id,
      name,
      at: [place.xM, place.yM],
      tapes: tapes?.map(({ alongM, distanceM }) => ({ along_m: alongM, distance_m: distanceM })) ?? null,
    })),
    round_m: roundM,
    round_cost_per_m: roundCostPerM,
  }
}
