import type { PointAnswer } from '../../../../shared/locate/answer'

/** How the peg of a point is drawn: filled for the likeliest where a leak was heard, crossed out when nothing of it could be used. */
export function pegState({ evidence, rank }: PointAnswer, isLeakHeard: boolean): 'silent' | 'best' | 'plain' {
  return evidence.clipsUsed === 0 ? 'silent' : isLeakHeard && rank === 1 ? 'best' : 'plain'
}
