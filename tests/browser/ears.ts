import type { BrowserContext, Page } from 'playwright-core'

/** What a page's loudspeaker got, as far as a listener at its very end hears it. */
export interface HeardNow {
  /** Largest sample of the last moment, full scale 1. */
  readonly peak: number
  /** Power below, within and above a band, in any one unit. */
  readonly below: number
  readonly within: number
  readonly above: number
}

/** Puts a listener before the loudspeaker of every page of this profile. To be called before the page is opened. */
export async function listenIn(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode | AudioParam) => AudioNode
    AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode | AudioParam) {
      if (to instanceof AudioDestinationNode && to.context instanceof AudioContext) {
        const ear = new AnalyserNode(to.context, { fftSize: 8192, smoothingTimeConstant: 0 })
        connect.call(this, ear)
        Object.assign(window, { ear })
      }
      return connect.call(this, to)
    } as AudioNode['connect']
  })
}

/** What is heard just now; silence when nothing was ever played. */
export async function heardNow(page: Page, [lowHz, highHz]: readonly [number, number]): Promise<HeardNow> {
  return page.evaluate(
    ({ lowHz, highHz }) => {
      const { ear } = window as unknown as { ear?: AnalyserNode }
      const heard = { peak: 0, below: 0, within: 0, above: 0 }
      if (ear === undefined) return heard
      const samples = new Float32Array(ear.fftSize)
      const levels = new Float32Array(ear.frequencyBinCount)
      ear.getFloatTimeDomainData(samples)
      ear.getFloatFrequencyData(levels)
      heard.peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
      for (const [bin, level] of levels.entries()) {
        const hz = (bin * ear.context.sampleRate) / ear.fftSize
        const power = Number.isFinite(level) ? 10 ** (level / 10) : 0
        heard[hz < lowHz ? 'below' : hz > highHz ? 'above' : 'within'] += power
      }
      return heard
    },
    { lowHz, highHz },
  )
}
