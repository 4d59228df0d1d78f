import { Random } from '../../shared/base/random'
import type { ClipEvidence } from '../../shared/evidence/evidence'
import { type Ground, noPaths, noTransfer, preparePaths, transfer } from '../../shared/ground/transfer'
import type { Line } from '../../shared/line/line'
import type { Sounding } from '../../shared/locate/answer'

export const NO_LINE: Line = {
  lengthM: null,
  depthM: null,
  airInletM: null,
  vertices: null,
  routeSdM: null,
  stretches: [],
  fittings: [],
  noises: [],
  pipe: null,
  unknown: {},
}

/** Exact mid-bands from 63 Hz to 6.3 kHz, Hz. */
export const MID_BANDS_HZ = Array.from({ length: 21 }, (_, i) => 1000 * 10 ** ((i - 12) / 10))

export const QUIET_RINGS: ClipEvidence['rings'] = {
  ratePerS: 0,
  medianPitchHz: null,
  pitchSpreadOctaves: null,
  medianDecayS: null,
  tonality: null,
  medianStrengthDb: null,
  medianRadiusM: null,
  assumedPressurePa: 101_325,
  burstRatePerS: 0,
  ringShare: null,
  regularity: null,
  slugRateHz: null,
}

export interface IdealSweep {
  readonly count: number
  readonly spacingM: number
  readonly depthM: number
  /** `null`: no leak. */
  readonly leakAlongM: number | null
  /** Signal over floor right above the leak in its best band (near 500 Hz), dB. */
  readonly overFloorDb: number
  readonly air: readonly ('on' | 'off')[]
  readonly ground?: Ground
  /** Gain (dB) between settings-down, standard deviation; 0 unless said. */
  readonly gainSdDb?: number
  /** Scatter of each level, standard deviation, dB; 0 unless said. */
  readonly scatterDb?: number
  readonly seed?: number
  /** Another leak beside the first, as loud, m along. */
  readonly secondLeakAlongM?: number
  /** Other sounds just under the surface that do not ring: an inlet ('with air') or a machine ('always'). */
  readonly others?: readonly {
    readonly atM: number
    readonly overFloorDb: number
    readonly sounds: 'with air' | 'always'
  }[]
  /** How far the floor stands above the usual at a place, air on and off alike, dB; 0 unless said. */
  readonly floorRiseDb?: (alongM: number) => number
  /** Points beyond the count, recorded last, m along. */
  readonly extraAlongM?: readonly number[]
}

/** Where an inlet or a machine sounds, m. */
const SURFACE_DEPTH_M = 0.15
const PLAIN_GROUND: Ground = {
  spreading: 1,
  absorptionDbPerMKhz: 30,
  pipeLevelDb: -200,
  pipeLossDbPerMKhz: 5,
  pipeLossDbPerM: 0,
}

/** Levels straight from the ground's own law: what a fit must give back when nothing else is there. */
export function idealSweep(sweep: IdealSweep): { line: Line; soundings: Sounding[] } {
  const random = new Random(sweep.seed ?? 1)
  const soundings: Sounding[] = []
  const even = Array.from({ length: sweep.count }, (_, k) => k * sweep.spacingM)
  for (const [k, alongM] of [...even, ...(sweep.extraAlongM ?? [])].entries()) {
    const gainDb = random.normal(0, sweep.gainSdDb ?? 0)
    for (const air of sweep.air) soundings.push(idealSounding({ point: k + 1, alongM, air }, sweep, gainDb, random))
  }
  const line = { ...NO_LINE, lengthM: (sweep.count - 1) * sweep.spacingM, depthM: sweep.depthM }
  return { line, soundings }
}

function idealSounding(
  at: { point: number; alongM: number; air: 'on' | 'off' },
  sweep: IdealSweep,
  gainDb: number,
  random: Random,
): Sounding {
  const airOn = at.air === 'on'
  const leaks = [sweep.leakAlongM, sweep.secondLeakAlongM].flatMap((atM) =>
    airOn && sweep.leakAlongM !== null && typeof atM === 'number'
      ? [{ atM, overFloorDb: sweep.overFloorDb, depthM: sweep.depthM }]
      : [],
  )
  const others = (sweep.others ?? [])
    .filter(({ sounds }) => airOn || sounds === 'always')
    .map((other) => ({ ...other, depthM: SURFACE_DEPTH_M }))
  const heardDb = (frequencyHz: number, sources: readonly (typeof leaks)[number][]) => {
    const floorDb = -70 - 4 * Math.log2(frequencyHz / 500) + (sweep.floorRiseDb?.(at.alongM) ?? 0)
    if (sources.length === 0) return { floorDb, totalDb: floorDb }
    const power = sources.map(({ atM, overFloorDb, depthM }) => {
      const away = Math.abs(at.alongM - atM)
      const geometry = { depthM, acrossM: away, alongPipeM: away, besidePipeM: 0 }
      const ground = sweep.ground ?? PLAIN_GROUND
      const moved = transfer(ground, preparePaths(geometry, 1, noPaths()), frequencyHz / 1000, noTransfer())
      const sourceDb = -70 + overFloorDb - 6 * Math.abs(Math.log2(frequencyHz / 500))
      return 10 ** ((sourceDb + moved.db + gainDb) / 10)
    })
    return { floorDb, totalDb: 10 * Math.log10(power.reduce((sum, each) => sum + each, 10 ** (floorDb / 10))) }
  }
  const bands = MID_BANDS_HZ.map((midHz) => {
    const levelDbFs = heardDb(midHz, [...leaks, ...others]).totalDb + random.normal(0, sweep.scatterDb ?? 0)
    return { midHz, levelDbFs, quietDbFs: levelDbFs, busyDbFs: levelDbFs, steadyDbFs: levelDbFs }
  })
  const leaksDb = MID_BANDS_HZ.map((hz) => heardDb(hz, leaks))
  const over = Math.max(...leaksDb.map(({ totalDb, floorDb }) => totalDb - floorDb))
  const ratePerS = over > 6 ? 12 : 0
  return {
    row: {
      ...at,
      file: `${String(at.point).padStart(2, '0')}-${at.air}.wav`,
      take: 1,
      sharedTake: true,
      sweep: '1',
      offsetM: 0,
      timeS: null,
      contact: null,
      airKpa: null,
      note: '',
      unknown: {},
    },
    evidence: {
      durationS: 6,
      sampleRateHz: 16_000,
      channels: 1,
      bands,
      rings: { ...QUIET_RINGS, ratePerS },
      ringList: [],
      bubbling: ratePerS > 0 ? 0.95 : 0.05,
      problems: [],
    },
    problems: [],
  }
}
