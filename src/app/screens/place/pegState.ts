import type { PointAnswer } from '../../../../shared/locate/answer'

/** How the peg of a point is drawn: filled for the likeliest, crossed out when nothing of it could be used. */
export function pegState({ evidence, rank }: PointAnswer): 'silent' | 'best' | 'plain' {
  return evidence.clipsUsed === 0 ? 'silent' : rank === 1 ? 'best' : 'plain'
}
