import { median, quantile } from '../../base/statistics'
import { powerToDb } from '../../base/units'
import type { ClipScan } from './clipScan'

/** Bass against everything, and how it swells. */
export interface WindRumble {
  /** Share of the power that lies below 80 Hz, in the middle one of the half seconds, 0 to 1. */
  readonly bassShare: number
  /** From the quiet to the loud half seconds of the bass (a tenth and nine tenths), dB. */
  readonly swellDb: number
}

const PIECE_S = 0.5

/**
 * How much of the clip is bass, and how far that bass swells and dies. By half seconds, so that a few thumps are no wind.
 *
 * @returns `null` when fewer than three half seconds hold any sound.
 */
export function windRumble(scan: ClipScan, bass: Float64Array): WindRumble | null {
  const perPiece = Math.round(PIECE_S * scan.blocksPerS)
  const levels: number[] = []
  const shares: number[] = []
  for (let from = 0; from + perPiece <= bass.length; from += perPiece) {
    let low = 0
    let rest = 0
    for (let i = from; i < from + perPiece; i++) {
      low += bass[i]!
      rest += scan.power[i]!
    }
    const level = powerToDb(low)
    if (level === null || rest === 0) continue // only the filter's tail sounds
    levels.push(level)
    shares.push(low / (low + rest))
  }
  if (levels.length < 3) return null
  return { bassShare: median(shares), swellDb: quantile(levels, 0.9) - quantile(levels, 0.1) }
}
