import type { Random } from '../base/random'
import type { Cover, SketchPlace } from '../line/line'
import { linePath } from '../line/linePath'
import type { Family } from './families'
import type { Ground, GroundStretch, PipeFitting } from './ground'
import type { Medium } from './groundPath'
import type { Plate } from './slabPath'

/** The size of a yard, m. */
export interface YardSize {
  readonly depthM: number
  readonly spacingM: number
  readonly lengthM: number
}

/** The ground of a yard: route, covers, soil, pipe. `leakM`: places a slab should like to cover. */
export function drawGround(family: Family, size: YardSize, leakM: readonly number[], random: Random): Ground {
  const corners = drawCorners(random.integer(...family.bends), size, random)
  return {
    route: linePath({ vertices: corners.vertices }),
    stretches: drawStretches(family, size, leakM, random),
    pipe: {
      lossDbPerM: random.uniform(0.3, 1.5),
      lossDbPerMKhz: random.uniform(...family.pipeLossDbPerMKhz),
      fittings: [...corners.atM, ...couplings(size, random)].map((atM) => drawFitting(atM, random)),
    },
  }
}

function drawCorners(bends: number, { lengthM }: YardSize, random: Random) {
  const gapM = lengthM / (bends + 1)
  const atM = Array.from({ length: bends }, (_, b) => gapM * (b + 1 + random.uniform(-0.3, 0.3)))
  const vertices: SketchPlace[] = [{ xM: 0, yM: 0 }]
  let heading = random.uniform(0, 2 * Math.PI)
  for (const [leg, toM] of [...atM, lengthM].entries()) {
    const last = vertices[leg]!
    const stepM = toM - (atM[leg - 1] ?? 0)
    vertices.push({ xM: last.xM + stepM * Math.cos(heading), yM: last.yM + stepM * Math.sin(heading) })
    heading += (random.chance(0.5) ? 1 : -1) * (random.chance(0.7) ? Math.PI / 2 : Math.PI / 4)
  }
  return { atM, vertices }
}

function couplings({ lengthM }: YardSize, random: Random): number[] {
  return Array.from({ length: random.integer(0, 2) }, () => random.uniform(0, lengthM))
}

/** A fitting is stiffer and heavier than pipe: it sends out like 0.2 to 1.5 m of it. Chosen, no source. */
function drawFitting(atM: number, random: Random): PipeFitting {
  return { atM, radiatesLikeM: random.uniform(0.2, 1.5), lossDb: random.uniform(0.5, 3) }
}

function drawStretches(family: Family, size: YardSize, leakM: readonly number[], random: Random): GroundStretch[] {
  const { lengthM, spacingM } = size
  const soil = drawMedium(random)
  if (random.chance(family.slabShare)) {
    const widthM = random.uniform(3, 7) * spacingM
    const over = random.chance(2 / 3) && leakM.length > 0 ? random.pick(leakM) : random.uniform(0, lengthM)
    const fromM = over - widthM * random.uniform(0.2, 0.8)
    const edges = [fromM, fromM + widthM].filter((m) => m > 0.5 * spacingM && m < lengthM - 0.5 * spacingM)
    return cut(edges, size, (midM) => (midM > fromM && midM < fromM + widthM ? 'slab' : 'grass'), soil, random)
  }
  const parts = random.integer(1, 3)
  const edges = Array.from({ length: parts - 1 }, (_, i) => (lengthM * (i + random.uniform(0.6, 1.4))) / parts)
  return cut(edges, size, () => random.pick(['grass', 'grass', 'soil', 'gravel', 'pavers'] as const), soil, random)
}

function cut(
  edges: readonly number[],
  { lengthM, depthM }: YardSize,
  coverAt: (midM: number) => Cover,
  soil: Medium,
  random: Random,
): GroundStretch[] {
  const bounds = [0, ...edges, lengthM]
  return bounds.slice(1).map((toM, i) => {
    const fromM = bounds[i]!
    const cover = coverAt((fromM + toM) / 2)
    return {
      fromM,
      toM,
      cover,
      depthM,
      medium: variedMedium(soil, random),
      coverLossDbPerKhz: cover === 'gravel' || cover === 'pavers' ? random.uniform(2, 6) : random.uniform(0, 2),
      plate: cover === 'slab' ? drawPlate(random) : null,
    }
  })
}

/** Soil at random: absorption and speed over the ranges measured in six topsoils. [OelzeOBrienDarmody2002] */
export function drawMedium(random: Random): Medium {
  return {
    absorptionDbPerCmKhz: random.logUniform(0.12, 0.96),
    speedMPerS: random.uniform(86, 260),
    obliquity: random.uniform(0, 1),
    surfaceShare: random.uniform(0, 0.5),
    coherence: random.uniform(0, 0.6),
  }
}

function variedMedium(soil: Medium, random: Random): Medium {
  const absorption = soil.absorptionDbPerCmKhz * Math.exp(random.normal(0, 0.2))
  return { ...soil, absorptionDbPerCmKhz: Math.min(Math.max(absorption, 0.12), 0.96) }
}

function drawPlate(random: Random): Plate {
  return {
    thicknessM: random.uniform(0.08, 0.15),
    lossFactor: random.logUniform(0.05, 0.3),
    sidewaysDb: random.uniform(-9, 0),
    resonanceHz: random.logUniform(80, 250),
    resonanceQuality: random.uniform(1.5, 4),
  }
}
