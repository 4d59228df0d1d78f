import type { LocateAnswer } from '../../../../shared/locate/answer'
import type { Session } from '../state'

export interface ConfirmNeeds {
  /** Ranked first. */
  readonly bestPoint: number
  /** The nearest places with usable clips before and after it along the line. */
  readonly flanks: readonly number[]
  readonly looked: boolean
  readonly played: boolean
  /** True as well when there is no flank to be played. */
  readonly flankPlayed: boolean
}

/**
 * What has to be done before somebody may say what they heard: the spectrum of the best point looked at, and it and one
 * point beside it played.
 *
 * @returns `null` when no place is named, so that there is nothing to confirm.
 */
export function missingForConfirm(
  answer: Pick<LocateAnswer, 'points' | 'sources'>,
  examined: Session['examined'][string] | undefined,
): ConfirmNeeds | null {
  const heard = answer.points.filter(({ evidence }) => evidence.clipsUsed > 0)
  const best = heard.reduce<(typeof heard)[number] | null>((a, b) => (a === null || b.rank < a.rank ? b : a), null)
  if (best === null || answer.sources.length === 0) return null
  const flanks = [before(heard, best.alongM), after(heard, best.alongM)].flatMap((flank) => flank ?? [])
  const { looked = [], played = [] } = examined ?? {}
  return {
    bestPoint: best.point,
    flanks,
    looked: looked.includes(best.point),
    played: played.includes(best.point),
    flankPlayed: flanks.length === 0 || flanks.some((point) => played.includes(point)),
  }
}

type Placed = readonly { readonly point: number; readonly alongM: number }[]

function before(points: Placed, alongM: number): number | null {
  return points.filter((each) => each.alongM < alongM).sort((a, b) => b.alongM - a.alongM)[0]?.point ?? null
}

function after(points: Placed, alongM: number): number | null {
  return points.filter((each) => each.alongM > alongM).sort((a, b) => a.alongM - b.alongM)[0]?.point ?? null
}
