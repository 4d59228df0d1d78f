import type { ComponentType } from 'react'
import type { JobLine } from '../../../../../shared/job/job'
import type { SignKind } from '../../../../../shared/job/signs'
import type { Cover, FittingKind, NoiseKind, SketchPlace } from '../../../../../shared/line/line'
import type { ShownUnits } from '../../../../../shared/words/shownUnits'
import type { Say } from '../../../frame/useSay'
import type { PadHandle } from '../../../sketch/pad/padHandle'
import type { PadNote } from '../../../sketch/pad/padNote'
import type { Action } from '../../../store/action'
import type { AppState } from '../../../store/state'
import type { Store } from '../../../store/store'

export const MODE_NAMES = ['legs', 'ground', 'things', 'signs', 'points', 'photo'] as const
/** What a tap on the sheet does. */
export type ModeName = (typeof MODE_NAMES)[number]

/** What can stand on the line besides covers and points. */
export type ThingKind = `fitting ${FittingKind}` | `noise ${NoiseKind}` | 'inlet'

/** What is chosen for the next taps; gone with the page, as nothing of it is drawn yet. */
export interface PadChoices {
  readonly cover: Cover
  /** Where the next stretch begins, m along; `null` before its first tap. */
  readonly fromM: number | null
  readonly thing: ThingKind
  readonly sign: SignKind
  /** A pulled corner swings its leg instead of stretching it. */
  readonly keepLengths: boolean
  /** Two places on the photo with a known distance, as far as they are tapped. */
  readonly scale: readonly SketchPlace[]
}

/** How fine a finger draws at the present scale, m. */
export interface Grain {
  readonly stepM: number
  readonly reachM: number
  readonly pxPerM: number
}

export interface ModeContext {
  /** As it is drawn just now: while a finger pulls, as it would be. */
  readonly jobLine: JobLine
  readonly store: Store
  readonly say: Say
  readonly units: ShownUnits
  readonly disabled: boolean
  readonly chosenId: string | null
  readonly choose: (id: string | null) => void
  readonly choices: PadChoices
  readonly change: (choices: Partial<PadChoices>) => void
}

/** A change that can be looked at before it is made. */
export interface PadStep {
  readonly preview: (state: AppState) => AppState
  readonly commit: (store: Store) => void
}

export function stepOf<Input>(action: Action<Input>, input: Input): PadStep {
  return {
    preview: (state) => action.perform(state, input),
    commit: (store) => store.dispatch(action, input),
  }
}

/** What the sheet shows and does in one mode. */
export interface PadMode {
  /** What to do next, in a sentence. */
  readonly hint: string
  readonly handles: readonly PadHandle[]
  readonly notes: readonly PadNote[]
  readonly showsPoints: boolean
  readonly onTap: (place: SketchPlace, grain: Grain) => void
  /** A handle put to a place; `null` where it cannot go. */
  readonly pulled: (id: string, to: SketchPlace, grain: Grain) => PadStep | null
  /** A handle moved by so many small steps. */
  readonly nudged: (id: string, right: number, up: number) => PadStep | null
  readonly remove: (id: string) => void
}

/** Fields and buttons under the sheet. */
export type ModeTools = ComponentType<{ readonly of: ModeContext }>
