import type { Line, OnLine, Stretch, WithUnknown } from './line'

/**
 * A line in the form of its file; `readLineJson` gives the same line again.
 *
 * @returns Plain data in full precision, what was not told left out, unknown keys and words as they were read.
 */
export function lineJson(line: Line): Record<string, unknown> {
  const known = {
    length_m: line.lengthM,
    depth_m: line.depthM,
    air_inlet_m: line.airInletM,
    vertices: line.vertices?.map(({ xM, yM }) => [xM, yM]),
    route_sd_m: line.routeSdM,
    stretches: line.stretches.length === 0 ? null : line.stretches.map(stretchFields),
    fittings: line.fittings.length === 0 ? null : line.fittings.map(onLineFields),
    noises: line.noises.length === 0 ? null : line.noises.map(onLineFields),
    pipe: line.pipe && withUnknown({ nominal_in: line.pipe.nominalIn, material: line.pipe.material }, line.pipe),
  }
  return withUnknown(known, line)
}

function stretchFields(stretch: Stretch): Record<string, unknown> {
  const known = {
    from_m: stretch.fromM,
    to_m: stretch.toM,
    cover: stretch.cover,
    depth_m: stretch.depthM,
    dig_cost_per_m: stretch.digCostPerM,
    dig_min_per_m: stretch.digMinPerM,
  }
  return withUnknown(known, stretch)
}

function onLineFields(part: OnLine<string>): Record<string, unknown> {
  return withUnknown({ at_m: part.atM, kind: part.kind }, part)
}

/** Told fields first, then the unknown ones. A word that was read as `other` goes back as it was written. */
function withUnknown(known: Record<string, unknown>, { unknown = {} }: WithUnknown): Record<string, unknown> {
  const told = Object.entries(known).filter(([, value]) => value !== null && value !== undefined)
  const words = told.map(([key, value]) => [
    key,
    value === 'other' && Object.hasOwn(unknown, key) ? unknown[key] : value,
  ])
  const rest = Object.entries(unknown).filter(([key]) => !Object.hasOwn(known, key))
  return Object.fromEntries([...words, ...rest])
}
