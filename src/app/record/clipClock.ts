import { steadyTime } from '../../../shared/record/steadyTime'

/** Tells when clips begin, although the device's clock may be set meanwhile. */
export class ClipClock {
  private clocks = bothClocks()

  /** Time now, s since 1970, and by how much the device's clock was set back since the last call, s. */
  tell(): { readonly timeS: number; readonly setBackS: number } {
    const { timeS, setBackS, start } = steadyTime(this.clocks, bothClocks())
    this.clocks = start
    return { timeS, setBackS }
  }
}

function bothClocks() {
  return { wallS: Date.now() / 1000, runningS: performance.now() / 1000 }
}
