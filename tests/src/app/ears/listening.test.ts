import { beforeEach, describe, expect, it } from 'vitest'
import { Listening, PLAYED_S, type PlayerLike } from '../../../../src/app/ears/listening'
import type { PlayOptions, Track } from '../../../../src/app/ears/player'

const RATE_HZ = 1000
const CLIPS = [{ id: 'on' }, { id: 'off' }, { id: 'next' }]

/** A player on a clock that the test turns. */
class FakePlayer implements PlayerLike {
  clock = 0
  playing: { readonly track: Track; readonly options: PlayOptions; readonly sinceS: number } | null = null
  readonly lifts: number[] = []
  wakes = 0
  wake() {
    this.wakes++
  }
  async play(track: Track, options: PlayOptions) {
    this.playing = { track, options, sinceS: this.clock }
  }
  pause() {
    this.playing = null
  }
  positionS() {
    return this.playing && this.playing.options.fromS + this.clock - this.playing.sinceS
  }
  clockS() {
    return this.clock
  }
  setBand() {}
  setVolumeDb() {}
  setLiftDb(liftDb: number) {
    this.lifts.push(liftDb)
  }
}

let player: FakePlayer
let played: string[]
let listening: Listening<{ id: string }>
let samples: Record<string, number>

const settle = () => new Promise((resolve) => setTimeout(resolve, 0))

/** Lets time pass in frames. */
const pass = (seconds: number) => {
  for (let frame = 0; frame < seconds * 50; frame++) {
    player.clock += 0.02
    listening.tick()
  }
}

beforeEach(() => {
  player = new FakePlayer()
  played = []
  samples = { on: 5, off: 5, next: 2 }
  listening = new Listening({
    player,
    samplesOf: async ({ id }) => {
      const durationS = samples[id]
      if (durationS === undefined) return { ok: false, why: { key: 'sound_lost', values: {} } }
      return { ok: true, value: { samples: new Float32Array(durationS * RATE_HZ), sampleRateHz: RATE_HZ } }
    },
    onPlayed: ({ id }) => void played.push(id),
  })
  listening.setClips(CLIPS)
})

describe('listening', () => {
  it('begins with the first clip, in silence', () => {
    expect(listening.get()).toMatchObject({ clipId: 'on', playing: false, band: null, loop: null })
    expect(player.playing).toBeNull()
  })

  it('takes the audio within the click itself, before the samples are there', () => {
    listening.toggle()
    expect(player.wakes).toBe(1)
  })

  it('goes on where it was paused', async () => {
    listening.toggle()
    await settle()
    pass(1.5)
    listening.toggle()
    expect(listening.positionS()).toBeCloseTo(1.5, 6)
    listening.toggle()
    await settle()
    expect(player.playing!.options.fromS).toBeCloseTo(1.5, 6)
  })

  it('goes over to another clip at the same place in time', async () => {
    listening.toggle()
    await settle()
    pass(1)
    listening.choose('off')
    await settle()
    expect(player.playing!.track.id).toBe('off')
    expect(player.playing!.options.fromS).toBeCloseTo(1, 1)
  })

  it('begins a shorter clip anew when it is over there', async () => {
    listening.seek(4)
    listening.choose('next')
    listening.toggle()
    await settle()
    expect(player.playing!.options.fromS).toBe(0)
  })

  it('tells that a clip was played only after it sounded for a second, and once', async () => {
    listening.toggle()
    await settle()
    pass(PLAYED_S - 0.1)
    expect(played).toEqual([])
    pass(0.2)
    pass(2)
    expect(played).toEqual(['on'])
  })

  it('adds up what sounded in pieces, but not the pauses between', async () => {
    listening.toggle()
    await settle()
    pass(0.6)
    listening.toggle()
    pass(5)
    expect(played).toEqual([])
    listening.toggle()
    await settle()
    pass(0.6)
    expect(played).toEqual(['on'])
  })

  it('does not count while the browser holds the sound back', async () => {
    listening.toggle()
    await settle()
    for (let frame = 0; frame < 500; frame++) listening.tick()
    expect(played).toEqual([])
  })

  it('jumps into a loop, and leaves it when somebody goes elsewhere', async () => {
    listening.setLoop({ fromS: 2, toS: 3 })
    expect(listening.positionS()).toBe(2)
    listening.toggle()
    await settle()
    expect(player.playing!.options).toMatchObject({ fromS: 2, loop: { fromS: 2, toS: 3 } })
    listening.seek(2.5)
    expect(listening.get().loop).not.toBeNull()
    listening.seek(4)
    expect(listening.get().loop).toBeNull()
  })

  it('lifts the quieter clip to the louder, within the band that is heard, while that is wanted', () => {
    const flat = (density: number) => ({
      density: new Float64Array(1001).fill(density),
      binWidthHz: 1,
      segmentCount: 1,
    })
    const humming = { ...flat(1e-9), density: new Float64Array(1001).fill(1e-9) }
    humming.density.fill(1e-3, 0, 100)
    listening.setDensities(
      new Map([
        ['on', flat(1e-9)],
        ['off', flat(4e-9)],
        ['next', humming],
      ]),
    )
    expect(listening.liftDb()).toBe(12)
    listening.setBand({ lowHz: 200, highHz: 800 })
    expect(listening.liftDb()).toBeCloseTo(10 * Math.log10(4), 6)
    expect(player.lifts.at(-1)).toBeCloseTo(10 * Math.log10(4), 6)
    listening.setMatched(false)
    expect(player.lifts.at(-1)).toBe(0)
  })

  it('says why a clip cannot be played, and stops', async () => {
    samples.on = undefined as never
    listening.toggle()
    await settle()
    expect(listening.get()).toMatchObject({ playing: false, trouble: { key: 'sound_lost' } })
  })

  it('rests at the start when a clip has come to its end', async () => {
    listening.toggle()
    await settle()
    pass(5)
    listening.ended()
    expect(listening.get().playing).toBe(false)
    expect(listening.positionS()).toBe(0)
  })

  it('falls silent when the chosen clip is gone, and stays on it when only others change', async () => {
    listening.toggle()
    await settle()
    listening.setClips([...CLIPS, { id: 'more' }])
    expect(player.playing).not.toBeNull()
    listening.setClips([{ id: 'elsewhere' }])
    expect(player.playing).toBeNull()
    expect(listening.get()).toMatchObject({ clipId: 'elsewhere', playing: false })
  })
})
