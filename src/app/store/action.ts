import type { WordKey } from '../../../shared/words/words'
import type { AppState } from './state'

/** Something a user can do. One file each in `actions/`; menus, keys and help come from these. */
export interface Action<Input> {
  readonly name: string
  /** What it does, as undo and help call it. */
  readonly words: WordKey
  /** As `Ctrl+Z`; `null` for none. */
  readonly shortcut: string | null
  /** A `job` action changes the open job: it is saved, can be undone, and is refused where another tab has the job. */
  readonly scope: 'job' | 'session' | 'device'
  /** The state after it; the same state when it changes nothing. No clock, no chance: they come in with the input. */
  readonly perform: (state: AppState, input: Input) => AppState
  /** Changes that follow each other with the same key are one step of undo, as the letters of a typed number are. */
  readonly mergeKey?: (input: Input) => string
}
