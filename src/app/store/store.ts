import type { Action } from './action'
import type { AppState, UndoStep } from './state'

/** Chosen: more steps than anybody takes back, and little memory, as a job shares what stayed with the one before. */
const MOST_STEPS = 200

/** The one store: what is, who wants to know of changes, and the way back. */
export class Store {
  private state: AppState
  private readonly listeners = new Set<() => void>()

  /** @param nowS Seconds since 1970, for the time of a job's last change. */
  constructor(
    first: AppState,
    private readonly nowS: () => number,
  ) {
    this.state = first
  }

  readonly get = (): AppState => this.state

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener)
    return () => this.listeners.delete(listener)
  }

  readonly dispatch = <Input>(action: Action<Input>, input: Input): void => {
    const before = this.state
    if (action.scope === 'job' && before.session.readOnly) return
    const after = action.perform(before, input)
    if (after === before) return
    this.put(action.scope === 'job' ? this.remembered(before, after, action, input) : after)
  }

  /** For what the program itself has to report: progress, evidence, answers. Never for what a user does to a job. */
  readonly update = (change: (state: AppState) => AppState): void => {
    const after = change(this.state)
    if (after !== this.state) this.put(after)
  }

  readonly undo = (): void => this.step('undo', 'redo')
  readonly redo = (): void => this.step('redo', 'undo')

  /** The next change begins a new step of undo, whatever it changes. */
  readonly closeStep = (): void => {
    const last = this.state.undo.at(-1)
    if (last === undefined || last.mergeKey === null) return
    this.put({ ...this.state, undo: [...this.state.undo.slice(0, -1), { ...last, mergeKey: null }] })
  }

  private put(state: AppState): void {
    this.state = state
    for (const listener of this.listeners) listener()
  }

  private remembered<Input>(before: AppState, after: AppState, action: Action<Input>, input: Input): AppState {
    if (before.job === null || after.job === null || after.job === before.job) return after
    const mergeKey = action.mergeKey ? `${action.name} ${action.mergeKey(input)}` : null
    const isSameStep = mergeKey !== null && before.undo.at(-1)?.mergeKey === mergeKey
    const step: UndoStep = { job: before.job, words: action.words, mergeKey }
    const undo = isSameStep ? before.undo : [...before.undo, step].slice(-MOST_STEPS)
    return { ...after, job: { ...after.job, changedS: this.nowS() }, undo, redo: [] }
  }

  private step(from: 'undo' | 'redo', to: 'undo' | 'redo'): void {
    const { state } = this
    const step = state[from].at(-1)
    if (step === undefined || state.job === null || state.session.readOnly) return
    const back: UndoStep = { job: state.job, words: step.words, mergeKey: null }
    this.put({
      ...state,
      job: { ...step.job, changedS: this.nowS() },
      [from]: state[from].slice(0, -1),
      [to]: [...state[to], back],
    })
  }
}
