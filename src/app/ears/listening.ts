import { levelBetween } from '../../../shared/listen/levelBetween'
import { matchLiftDb } from '../../../shared/listen/matchLiftDb'
import type { PassBand } from '../../../shared/listen/passBand'
import type { Loop } from '../../../shared/listen/playPosition'
import type { PowerDensity } from '../../../shared/spectrum/welch'
import type { Keyed } from '../../../shared/words/sentence'
import type { PlainSamples } from '../../worker/protocol'
import type { ClipReading } from '../analysis/clipReader'
import type { PlayOptions, Track } from './player'

/** What is listened to and how. Plain data, never changed in place. */
export interface ListeningState {
  /** `null` when there is nothing to hear. */
  readonly clipId: string | null
  readonly playing: boolean
  readonly band: PassBand | null
  readonly loop: Loop | null
  /** Whether the clips are made as loud as each other. */
  readonly matched: boolean
  readonly volumeDb: number
  /** Why nothing sounds though it should. */
  readonly trouble: Keyed | null
}

/** The part of the player that is needed here. */
export interface PlayerLike {
  wake(): void
  play(track: Track, options: PlayOptions): Promise<void>
  pause(): void
  positionS(): number | null
  clockS(): number
  setBand(band: PassBand | null): void
  setVolumeDb(volumeDb: number): void
  setLiftDb(liftDb: number): void
}

interface Hearable {
  readonly id: string
}

export interface ListeningParts<Clip extends Hearable> {
  readonly player: PlayerLike
  readonly samplesOf: (clip: Clip) => Promise<ClipReading<PlainSamples>>
  /** A clip has really sounded for a second or more; told once a clip. */
  readonly onPlayed: (clip: Clip) => void
}

/** How long a clip must have sounded to count as played, s. */
export const PLAYED_S = 1

const FIRST: ListeningState = {
  clipId: null,
  playing: false,
  band: null,
  loop: null,
  matched: true,
  volumeDb: 0,
  trouble: null,
}

/** Listening to the clips of one point and of those beside it. */
export class Listening<Clip extends Hearable> {
  private state = FIRST
  private clips: readonly Clip[] = []
  private densities: ReadonlyMap<string, PowerDensity> = new Map()
  private readonly listeners = new Set<() => void>()
  private readonly soundedS = new Map<string, number>()
  private restS = 0
  private durationS = Number.POSITIVE_INFINITY
  private lastClockS = 0
  private turn = 0

  constructor(private readonly parts: ListeningParts<Clip>) {}

  readonly get = (): ListeningState => this.state

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener)
    return () => this.listeners.delete(listener)
  }

  /** Other clips: silence, and the first of them is chosen unless the one before is still there. */
  setClips(clips: readonly Clip[]): void {
    const isSame = clips.length === this.clips.length && clips.every(({ id }, i) => id === this.clips[i]!.id)
    this.clips = clips
    if (isSame) return
    const stays = clips.some(({ id }) => id === this.state.clipId)
    if (stays) return
    this.rest(0)
    this.put({ clipId: clips[0]?.id ?? null, playing: false, loop: null, trouble: null })
  }

  /** Spectra by clip, from which the clips are made as loud as each other. */
  setDensities(densities: ReadonlyMap<string, PowerDensity>): void {
    this.densities = densities
    this.parts.player.setLiftDb(this.liftDb())
  }

  /** Goes over to another clip, at the same place in time. */
  choose(clipId: string): void {
    if (clipId === this.state.clipId) return
    const atS = this.positionS()
    this.put({ clipId, trouble: null })
    this.restS = atS
    if (this.state.playing) void this.start(atS)
  }

  /** Plays or pauses; to be called from a click or key. */
  toggle(): void {
    if (this.state.playing) {
      this.rest(this.positionS())
      this.put({ playing: false })
      return
    }
    if (this.state.clipId === null) return
    this.parts.player.wake()
    this.put({ playing: true, trouble: null })
    const { loop } = this.state
    const fromS = this.restS >= this.durationS - 0.05 ? 0 : this.restS
    void this.start(loop !== null && (fromS < loop.fromS || fromS >= loop.toS) ? loop.fromS : fromS)
  }

  seek(toS: number): void {
    this.restS = Math.max(0, toS)
    const { loop, playing } = this.state
    if (loop !== null && (toS < loop.fromS || toS > loop.toS)) this.put({ loop: null })
    if (playing) void this.start(this.restS)
    else this.tellTime()
  }

  setLoop(loop: Loop | null): void {
    const atS = this.positionS()
    this.put({ loop })
    const toS = loop !== null && (atS < loop.fromS || atS >= loop.toS) ? loop.fromS : atS
    this.restS = toS
    if (this.state.playing) void this.start(toS)
    else this.tellTime()
  }

  setBand(band: PassBand | null): void {
    this.put({ band })
    this.parts.player.setBand(band)
    this.parts.player.setLiftDb(this.liftDb())
  }

  setMatched(matched: boolean): void {
    this.put({ matched })
    this.parts.player.setLiftDb(this.liftDb())
  }

  setVolumeDb(volumeDb: number): void {
    this.put({ volumeDb })
    this.parts.player.setVolumeDb(volumeDb)
  }

  /** The player has come to the end of the clip by itself. */
  ended(): void {
    this.rest(0)
    this.put({ playing: false })
  }

  /** Where the chosen clip is, s. */
  positionS(): number {
    return this.parts.player.positionS() ?? this.restS
  }

  /** By how much the chosen clip is lifted now, dB. */
  liftDb(): number {
    if (!this.state.matched || this.state.clipId === null) return 0
    const levelOf = (id: string) => {
      const density = this.densities.get(id)
      return density === undefined ? null : levelBetween(density, this.state.band)
    }
    return matchLiftDb(
      levelOf(this.state.clipId),
      this.clips.map(({ id }) => levelOf(id)),
    )
  }

  /** To be called often while it plays: counts what has really sounded. */
  tick(): void {
    const clockS = this.parts.player.clockS()
    const passedS = clockS - this.lastClockS
    this.lastClockS = clockS
    const { clipId } = this.state
    if (clipId === null || this.parts.player.positionS() === null || passedS <= 0) return
    const beforeS = this.soundedS.get(clipId) ?? 0
    this.soundedS.set(clipId, beforeS + passedS)
    const clip = this.clips.find(({ id }) => id === clipId)
    if (clip !== undefined && beforeS < PLAYED_S && beforeS + passedS >= PLAYED_S) this.parts.onPlayed(clip)
  }

  private async start(fromS: number): Promise<void> {
    const turn = ++this.turn
    const clip = this.clips.find(({ id }) => id === this.state.clipId)
    if (clip === undefined) return
    try {
      const reading = await this.parts.samplesOf(clip)
      if (turn !== this.turn || !this.state.playing) return
      if (!reading.ok) return this.fail(reading.why)
      const { samples, sampleRateHz } = reading.value
      this.durationS = samples.length / sampleRateHz
      const { loop } = this.state
      const inClipS = fromS < this.durationS ? fromS : 0
      this.lastClockS = this.parts.player.clockS()
      await this.parts.player.play(
        { id: clip.id, samples, sampleRateHz },
        { fromS: inClipS, loop, liftDb: this.liftDb() },
      )
    } catch (error) {
      if (turn === this.turn) this.fail({ key: 'listen_wrong', values: { why: String(error) } })
    }
  }

  private fail(trouble: Keyed): void {
    this.rest(this.restS)
    this.put({ playing: false, trouble })
  }

  private rest(atS: number): void {
    this.turn++
    this.parts.player.pause()
    this.restS = atS
    this.tellTime()
  }

  private put(change: Partial<ListeningState>): void {
    this.state = { ...this.state, ...change }
    for (const listener of this.listeners) listener()
  }

  /** The place in time is not part of the state, but who shows it wants to know. */
  private tellTime(): void {
    for (const listener of this.listeners) listener()
  }
}
