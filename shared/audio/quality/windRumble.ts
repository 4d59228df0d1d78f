import { quantile } from '../../base/statistics'
import { powerToDb } from '../../base/units'
import type { ClipScan } from './clipScan'

/** Bass against everything, and how it swells. */
export interface WindRumble {
  /** Share of the clip's power that lies below 80 Hz, 0 to 1. */
  readonly bassShare: number
  /** From the quiet to the loud half seconds of the bass (a tenth and nine tenths), dB. */
  readonly swellDb: number
}

const PIECE_S = 0.5

/**
 * How much of the clip is bass, and how far that bass swells and dies.
 *
 * @returns `null` when the clip is shorter than three pieces of half a second, or silent.
 */
export function windRumble(scan: ClipScan, bass: Float64Array): WindRumble | null {
  const perPiece = Math.round(PIECE_S * scan.blocksPerS)
  const levels: number[] = []
  let low = 0
  let rest = 0
  for (let from = 0; from + perPiece <= bass.length; from += perPiece) {
    let piece = 0
    for (let i = from; i < from + perPiece; i++) {
      piece += bass[i]!
      rest += scan.power[i]!
    }
    low += piece
    const level = powerToDb(piece)
    if (level !== null) levels.push(level)
  }
  if (levels.length < 3) return null
  return { bassShare: low / (low + rest), swellDb: quantile(levels, 0.9) - quantile(levels, 0.1) }
}
