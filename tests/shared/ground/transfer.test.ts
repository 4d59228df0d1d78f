import { expect, it } from 'vitest'
import { noPaths, noTransfer, preparePaths, transfer } from '../../../shared/ground/transfer'
import { close } from '../../support/close'

const SILENT_PIPE = { pipeLevelDb: -300, pipeLossDbPerMKhz: 5, pipeLossDbPerM: 0 }
const above = { besidePipeM: 0, alongPipeM: 0 }

function levelDb(
  ground: Parameters<typeof transfer>[0],
  geometry: Parameters<typeof preparePaths>[0],
  frequencyKhz: number,
  depthRatio = 1,
): number {
  return transfer(ground, preparePaths(geometry, depthRatio, noPaths()), frequencyKhz, noTransfer()).db
}

/** Amplitude exponent 1, absorption of so many nepers a metre at 1 kHz. */
const soil = (nepersPerM: number) => ({
  ...SILENT_PIPE,
  spreading: 1,
  absorptionDbPerMKhz: nepersPerM * 8.685889638,
})

// Spreading and absorption are Bornitz's law, amplitude ~ r^−n·exp(−α·r), with n = 1 for a body wave inside the ground and n = 2 for
// one along the free surface, as Richart, Hall & Woods 1970 and Kim & Lee 2000 print it. The figures below follow from it
// with r² = x² + d² and 20·lg e = 8.686 dB a neper. [Bornitz1931] [RichartHallWoods1970] [KimLee2000]

it('falls by the distances of a point source under the ground, and twice as fast along the free surface', () => {
  for (const [acrossM, drop] of [
    [0.5, 3.0103],
    [1, 6.9897],
    [1.5, 10],
    [2, 12.3045],
    [3, 15.682],
  ] as const) {
    const because = '10·lg(1 + (x/d)²) with d = 0.5 m, to four decimals'
    close(levelDb(soil(0), { depthM: 0.5, acrossM, ...above }, 1), -drop, { abs: 1e-4, because })
    const freeSurface = { ...soil(0), spreading: 2 }
    close(levelDb(freeSurface, { depthM: 0.5, acrossM, ...above }, 1), -2 * drop, { abs: 2e-4, because })
  }
})

/** Half widths of the lobe at the surface, m, where it has fallen by 3.01, 6.02 and 10 dB. */
const LOBES = [
  { depthM: 0.3, nepersPerM: 0, halfWidthsM: [0.3, 0.52, 0.9] },
  { depthM: 0.3, nepersPerM: 1, halfWidthsM: [0.247, 0.393, 0.589] },
  { depthM: 0.3, nepersPerM: 3, halfWidthsM: [0.194, 0.293, 0.41] },
  { depthM: 0.5, nepersPerM: 0, halfWidthsM: [0.5, 0.866, 1.5] },
  { depthM: 0.5, nepersPerM: 1, halfWidthsM: [0.374, 0.581, 0.842] },
  { depthM: 0.5, nepersPerM: 3, halfWidthsM: [0.276, 0.409, 0.558] },
  { depthM: 0.9, nepersPerM: 0, halfWidthsM: [0.9, 1.559, 2.7] },
  { depthM: 0.9, nepersPerM: 1, halfWidthsM: [0.582, 0.879, 1.23] },
  { depthM: 0.9, nepersPerM: 3, halfWidthsM: [0.401, 0.584, 0.779] },
]

it.each(LOBES)('is as wide over a source $depthM m deep in soil of $nepersPerM Np/m as Bornitz has it', (lobe) => {
  const { depthM, nepersPerM, halfWidthsM } = lobe
  for (const [i, dropDb] of [3.0103, 6.0206, 10].entries()) {
    let inside = 0
    let outside = 10
    while (outside - inside > 1e-6) {
      const acrossM = (inside + outside) / 2
      if (levelDb(soil(nepersPerM), { depthM, acrossM, ...above }, 1) > -dropDb) inside = acrossM
      else outside = acrossM
    }
    close(inside, halfWidthsM[i]!, { abs: 6e-4, because: 'worked out by hand to a millimetre' })
  }
})

it('absorbs what was measured in soil over 40 cm at 1 kHz', () => {
  // Oelze, O'Brien & Darmody 2002: 0.12 to 0.96 dB per cm and kHz, so 4.8 to 38.4 dB. [OelzeOBrienDarmody2002]
  for (const [dbPerCmKhz, drop] of [
    [0.12, 4.8],
    [0.96, 38.4],
  ] as const) {
    const ground = { ...SILENT_PIPE, spreading: 0, absorptionDbPerMKhz: dbPerCmKhz * 100 }
    const acrossM = Math.sqrt(0.9 ** 2 - 0.5 ** 2) // slant path of 0.9 m against 0.5 m straight up
    close(levelDb(ground, { depthM: 0.5, acrossM, ...above }, 1), -drop, { abs: 1e-9, because: 'closed form' })
  }
})

it('agrees with Bornitz between two distances', () => {
  // −20·n·lg 2 − 8.686·α from 1 m to 2 m. [Bornitz1931] [RichartHallWoods1970]
  const drop = (n: number, nepersPerM: number) => {
    const ground = { ...soil(nepersPerM), spreading: n }
    const at = (slantM: number) => levelDb(ground, { depthM: 0.5, acrossM: Math.sqrt(slantM ** 2 - 0.25), ...above }, 1)
    return at(2) - at(1)
  }
  close(drop(1, 0.1), -6.8892, { abs: 1e-3, because: 'worked example' })
  close(drop(2, 0), -12.0412, { abs: 1e-3, because: 'worked example' })
  close(drop(0.5, 0.1), -3.8789, { abs: 1e-3, because: 'worked example' })
})

it('loses so many decibels a metre along the pipe when that path rules', () => {
  // Right above the pipe the surface falls off as the wave inside it does. [Muggleton2023]
  const ground = { spreading: 1, absorptionDbPerMKhz: 90, pipeLevelDb: -6, pipeLossDbPerMKhz: 3.084, pipeLossDbPerM: 0 }
  const at = (m: number) => levelDb(ground, { depthM: 0.4, acrossM: m, alongPipeM: m, besidePipeM: 0 }, 1)
  close(at(5) - at(4), -3.084, { abs: 1e-6, because: 'the direct path is far below' })
})

it('adds the powers of the two paths', () => {
  const ground = { spreading: 1, absorptionDbPerMKhz: 0, pipeLevelDb: 0, pipeLossDbPerMKhz: 0, pipeLossDbPerM: 0 }
  close(levelDb(ground, { depthM: 1, acrossM: 0, ...above }, 1), 3.0103, { abs: 1e-4, because: 'twice the power' })
})

it('knows how it changes with each number of the ground', () => {
  const ground = { spreading: 0.9, absorptionDbPerMKhz: 31, pipeLevelDb: -9, pipeLossDbPerMKhz: 6, pipeLossDbPerM: 0.7 }
  const geometry = { depthM: 0.6, acrossM: 0.9, alongPipeM: 1.1, besidePipeM: 0.2 }
  const f = 0.63
  const out = transfer(ground, preparePaths(geometry, 1.1, noPaths()), f, noTransfer())
  const step = 1e-5
  const slope = (changed: Partial<typeof ground>, ratio = 1.1) =>
    (levelDb({ ...ground, ...changed }, geometry, f, ratio) - out.db) / step
  const because = 'central values against a small step'
  close(out.bySpreading, slope({ spreading: 0.9 + step }), { abs: 1e-3, because })
  close(out.byLogAbsorption, slope({ absorptionDbPerMKhz: 31 * Math.exp(step) }), { abs: 1e-3, because })
  close(out.byPipeLevel, slope({ pipeLevelDb: -9 + step }), { abs: 1e-3, because })
  close(out.byLogPipeLoss, slope({ pipeLossDbPerMKhz: 6 * Math.exp(step) }), { abs: 1e-3, because })
  close(out.byPipeLoss, slope({ pipeLossDbPerM: 0.7 + step }), { abs: 1e-3, because })
  close(out.byLogDepth, slope({}, 1.1 * Math.exp(step)), { abs: 1e-3, because })
  expect(out.bySpreading).toBeLessThan(0)
})
