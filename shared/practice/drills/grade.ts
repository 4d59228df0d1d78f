import { type Drill, RIGHT_WITHIN_SPACINGS } from './question'

export interface Grade {
  readonly right: boolean
  /** Spacings from the true place; `null` where no place is asked. */
  readonly errorSpacings: number | null
}

/** Whether an answer is right; a place is when it is within half a spacing of the true one. */
export function grade(drill: Drill, truth: string, said: string): Grade {
  if (drill !== 'place') return { right: said === truth, errorSpacings: null }
  const errorSpacings = Math.abs(Number(said) - Number(truth))
  return { right: errorSpacings <= RIGHT_WITHIN_SPACINGS + 1e-9, errorSpacings }
}
