import { expect, it } from 'vitest'
import { noPaths, noTransfer, preparePaths, transfer } from '../../../shared/ground/transfer'
import { close } from '../../support/close'

const SILENT_PIPE = { pipeLevelDb: -300, pipeLossDbPerMKhz: 5 }
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

it('falls by the distances of a point source under the ground', () => {
  // Geometry: depth 0.5 m, no absorption, 1.5 m to the side: 10·log10(1 + 9) = 10.000 dB; 1 m: 6.990; 3 m: 15.682.
  for (const [acrossM, drop] of [
    [0.5, 3.0103],
    [1, 6.9897],
    [1.5, 10],
    [3, 15.682],
  ] as const) {
    close(levelDb(soil(0), { depthM: 0.5, acrossM, ...above }, 1), -drop, { abs: 1e-3, because: 'closed form' })
    const square = { ...soil(0), spreading: 2 }
    close(levelDb(square, { depthM: 0.5, acrossM, ...above }, 1), -2 * drop, { abs: 2e-3, because: 'closed form' })
  }
})

it('has the half widths of the surface lobe', () => {
  // Depth 0.5 m: −6.02 dB at 0.866 m without absorption, −3.01 dB at 0.374 m with 1 Np/m; depth 0.9 m, 3 Np/m:
  // −10 dB at 0.779 m. Worked from 20·log10(r/d) + 8.686·α·(r − d).
  close(levelDb(soil(0), { depthM: 0.5, acrossM: Math.sqrt(3) / 2, ...above }, 1), -6.0206, {
    abs: 1e-3,
    because: 'closed form',
  })
  close(levelDb(soil(1), { depthM: 0.5, acrossM: 0.374, ...above }, 1), -3.0103, {
    abs: 5e-3,
    because: '3 digits of width',
  })
  close(levelDb(soil(3), { depthM: 0.9, acrossM: 0.779, ...above }, 1), -10, {
    abs: 0.02,
    because: '3 digits of width',
  })
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
  // Bornitz as in Richart, Hall & Woods 1970: n = 1, α = 0.1 /m, 1 m → 2 m: −6.8892 dB; n = 2, α = 0: −12.0412 dB.
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
  const ground = { spreading: 1, absorptionDbPerMKhz: 90, pipeLevelDb: -6, pipeLossDbPerMKhz: 3.084 }
  const at = (m: number) => levelDb(ground, { depthM: 0.4, acrossM: m, alongPipeM: m, besidePipeM: 0 }, 1)
  close(at(5) - at(4), -3.084, { abs: 1e-6, because: 'the direct path is far below' })
})

it('adds the powers of the two paths', () => {
  const ground = { spreading: 1, absorptionDbPerMKhz: 0, pipeLevelDb: 0, pipeLossDbPerMKhz: 0 }
  close(levelDb(ground, { depthM: 1, acrossM: 0, ...above }, 1), 3.0103, { abs: 1e-4, because: 'twice the power' })
})

it('knows how it changes with each number of the ground', () => {
  const ground = { spreading: 0.9, absorptionDbPerMKhz: 31, pipeLevelDb: -9, pipeLossDbPerMKhz: 6 }
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
  close(out.byLogDepth, slope({}, 1.1 * Math.exp(step)), { abs: 1e-3, because })
  expect(out.bySpreading).toBeLessThan(0)
})
