import { goertzel } from '../goertzel'
import type { ClipScan } from './clipScan'

/** Rate at which the comb is looked for. */
const RATE_HZ = 1_000

/** Length of the pieces whose powers are summed: short enough for a mains that wanders by 0.2 Hz. */
const PIECE_S = 1

/** Fewer pieces leave too much to chance. */
const LEAST_PIECES = 3

const HARMONICS = [1, 2, 3, 4, 5]

/** A harmonic stands out when it is this much over what lies beside it: ten times. */
const TONE_RATIO = 10 // chosen: for three pieces of noise the chance of one is below 1e-9

/** Where beside it, Hz: out of the main lobe (±2 Hz), clear of the other comb. */
const BESIDE_HZ = [-7, -4, 4, 7]

/** Harmonics that must stand out; one of them the first or second. */
const LEAST_HARMONICS = 3 // chosen: a pump or a fan gives one or two

/**
 * A comb of steady tones at 50 or 60 Hz and its multiples.
 *
 * A machine that turns at half that speed has tones halfway between too, and is no mains hum.
 *
 * @returns 50 or 60; `null` when there is none, or the clip is shorter than 3 s.
 */
export function mainsHum(scan: ClipScan): 50 | 60 | null {
  const pieces = windowedPieces(scan)
  if (pieces.samples.length < LEAST_PIECES) return null
  const strengths = ([50, 60] as const).map((mainsHz) => ({ mainsHz, tones: combTones(pieces, mainsHz) }))
  strengths.sort((a, b) => b.tones - a.tones)
  return strengths[0]!.tones >= LEAST_HARMONICS ? strengths[0]!.mainsHz : null
}

interface Pieces {
  readonly samples: readonly Float64Array[]
  readonly rateHz: number
}

/** Pieces of the clip's bass, Hann-windowed. */
function windowedPieces(scan: ClipScan): Pieces {
  const factor = Math.max(1, Math.round(scan.slowRateHz / RATE_HZ))
  const rateHz = scan.slowRateHz / factor
  const length = Math.round(rateHz * PIECE_S)
  const window = Float64Array.from({ length }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / length) ** 2)
  const samples: Float64Array[] = []
  for (let from = 0; from + length * factor <= scan.slow.length; from += length * factor) {
    samples.push(
      window.map((weight, i) => {
        let sum = 0
        for (let k = 0; k < factor; k++) sum += scan.slow[from + i * factor + k]!
        return sum * weight
      }),
    )
  }
  return { samples, rateHz }
}

/** How many harmonics stand out; 0 when the first two do not, or when tones halfway between them do. */
function combTones(pieces: Pieces, mainsHz: number): number {
  const stands = HARMONICS.map((harmonic) => {
    if (harmonic > 2) return false
    return standsOut(pieces, harmonic * mainsHz)
  })
  if (!stands[0] && !stands[1]) return 0
  if ([0.5, 1.5, 2.5].some((halfway) => standsOut(pieces, halfway * mainsHz))) return 0
  return HARMONICS.filter((harmonic, i) => stands[i] || (harmonic > 2 && standsOut(pieces, harmonic * mainsHz))).length
}

function standsOut(pieces: Pieces, frequencyHz: number): boolean {
  const power = (hz: number) => pieces.samples.reduce((sum, piece) => sum + goertzel(piece, hz / pieces.rateHz), 0)
  const beside = BESIDE_HZ.reduce((sum, offset) => sum + power(frequencyHz + offset), 0) / BESIDE_HZ.length
  return power(frequencyHz) > TONE_RATIO * beside
}
