/** A state that others may watch. Plain data, never changed in place. */
export abstract class Watched<State> {
  private readonly listeners = new Set<() => void>()

  constructor(protected state: State) {}

  readonly get = (): State => this.state

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener)
    return () => this.listeners.delete(listener)
  }

  protected put(change: Partial<State>): void {
    this.state = { ...this.state, ...change }
    for (const listener of this.listeners) listener()
  }
}
