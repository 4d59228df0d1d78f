import type { AssignedClip, ClipOrder } from '../../../shared/sweep/assignClips'

/** Clips of a recorder that wait to be told to points of a line. */
export interface Joining {
  readonly lineId: string
  /** Of the folder or zip, or a word for loose clips. */
  readonly name: string
  readonly clips: readonly AssignedClip[]
  /** Files that are no recordings. */
  readonly leftOut: readonly string[]
  /** Id of the sweep they join; `null` for one of their own. */
  readonly sweepId: string | null
  readonly how: JoinWay
  /** The point that the first clip is of, where they go by order. */
  readonly firstPoint: number | null
}

/** By the number in the name, or by order with what was recorded at each point. */
export type JoinWay = 'name' | ClipOrder
