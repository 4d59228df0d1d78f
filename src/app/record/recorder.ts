import type { JobLine } from '../../../shared/job/job'
import { CHUNK_S } from '../../../shared/record/joinChunks'
import { nextSlot, slotAgain, slotAt } from '../../../shared/record/nextSlot'
import { recordedClip } from '../../../shared/record/recordedClip'
import { recordInto, sweepSoFar } from '../../../shared/record/recordInto'
import {
  type EarlyEnd,
  FIRST_RECORDING,
  isBusy,
  nextRecording,
  type RecordingEvent,
  type RecordingState,
} from '../../../shared/record/recordingState'
import type { HeardBlock } from '../../../shared/record/settling'
import { type ListenPoint, nextTake, type Slot } from '../../../shared/record/slot'
import { steadyTime } from '../../../shared/record/steadyTime'
import { pointsOnLine } from '../../../shared/sketch/pointsOnLine'
import { type Keyed, sentence } from '../../../shared/words/sentence'
import { newId } from '../newId'
import { type Database, isFull, type KeptRecording } from '../storage/database'
import { beginRecording } from '../storage/recordings'
import { askToPersist, freeBytes } from '../storage/room'
import type { Saver } from '../storage/saver'
import { addRecordedClip } from '../store/actions/addRecordedClip'
import { shownLine } from '../store/selectors/shownLine'
import type { Store } from '../store/store'
import type { CaptureReport } from './captureMessages'
import { filesOf } from './leftRecordings'
import { listMicrophones, type Microphone, MicrophoneError, openMicrophone } from './microphone'
import { RecorderEars } from './recorderEars'
import { KeepingError, RecordingKeeper } from './recordingKeeper'
import { speak } from './speak'
import { WakeLock } from './wakeLock'

/** What the screen shows of the recorder. Plain data, never changed in place. */
export interface RecorderState {
  readonly recording: RecordingState
  /** Name of the open microphone; `null` while none is open. */
  readonly device: string | null
  readonly deviceId: string | null
  readonly devices: readonly { readonly id: string; readonly name: string }[]
  readonly monitoring: boolean
  /** What went wrong last; `null` when nothing did since the last start. */
  readonly trouble: Keyed | null
  /** The clip recorded last, by its place in the job. */
  readonly last: { readonly lineId: string; readonly sweep: string; readonly file: string; readonly slot: Slot } | null
  /** The sweep that clips join, when it was chosen. */
  readonly sweep: string | null
  readonly freeBytes: number | null
}

export interface RecorderParts {
  readonly store: Store
  readonly database: Database
  readonly saver: Saver
  /** Looks again for recordings that never came into their job. */
  readonly findLeft: () => Promise<void>
}

/** Blocks of the audio thread are joined to this length for the eye and for settling, s. */
const SHOWN_BLOCK_S = 0.1

/** How long the last chunk of a microphone that has gone is waited for, ms. */
const GONE_MS = 1500

const FIRST: RecorderState = {
  recording: FIRST_RECORDING,
  device: null,
  deviceId: null,
  devices: [],
  monitoring: false,
  trouble: null,
  last: null,
  sweep: null,
  freeBytes: null,
}

/**
 * Records clips at points into the open job: does what `nextRecording` decides. Owns the microphone while it is open.
 */
export class Recorder {
  private state = FIRST
  private readonly listeners = new Set<() => void>()
  private readonly blockListeners = new Set<(block: HeardBlock) => void>()
  private readonly keeper: RecordingKeeper
  private readonly wakeLock = new WakeLock()
  private microphone: Microphone | null = null
  private ears: RecorderEars | null = null
  private joined: HeardBlock | null = null
  private channelCount = 1
  private current: KeptRecording | null = null
  private clocks = bothClocks()
  private line: JobLine | null = null
  /** The screen was left: the microphone goes as soon as nothing is recorded. */
  private left = false

  constructor(private readonly parts: RecorderParts) {
    this.keeper = new RecordingKeeper({
      onEnd: (id) => {
        if (this.current?.id === id) void this.keep()
      },
      onLost: (id, full) => this.chunkLost(id, full),
    })
    parts.store.subscribe(() => this.followStore())
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') this.cut('hidden')
    })
    navigator.mediaDevices?.addEventListener('devicechange', () => void this.listDevices())
    this.followStore()
    void this.lookForRoom()
  }

  readonly get = (): RecorderState => this.state

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener)
    return () => this.listeners.delete(listener)
  }

  /** Blocks of 20 ms as they are heard, for the tap test. */
  readonly onBlock = (listener: (block: HeardBlock) => void): (() => void) => {
    this.blockListeners.add(listener)
    return () => this.blockListeners.delete(listener)
  }

  /** For the live spectrum; `null` while no microphone is open. */
  analyser(): AnalyserNode | null {
    return this.microphone?.analyser ?? null
  }

  /** Opens the microphone. To be called from a click or key. */
  async open(): Promise<void> {
    this.left = false
    if (this.state.recording.phase !== 'closed') return
    this.step({ kind: 'open' })
    this.put({ trouble: null })
    try {
      const microphone = await openMicrophone(this.parts.store.get().device.listen.deviceId, {
        onReport: (report) => this.take(report),
        onGone: () => this.gone(),
        onHeldBack: () => this.cut('hidden'),
      })
      if (this.left) return this.discard(microphone)
      this.microphone = microphone
      this.ears = new RecorderEars(microphone.context, microphone.source)
      const sink = this.keeper.sink()
      microphone.command({ kind: 'sink', port: sink }, [sink])
      this.wakeLock.hold()
      this.put({ device: microphone.device, deviceId: microphone.deviceId })
      this.step({ kind: 'opened' })
      void this.listDevices()
      void askToPersist().then(() => this.lookForRoom())
    } catch (error) {
      this.step({ kind: 'gone', endedBy: 'stopped' })
      const fault = error instanceof MicrophoneError ? error : new MicrophoneError('mic_failed', String(error))
      this.put({ trouble: { key: fault.fault, values: { why: fault.why } } })
    }
  }

  /** Starts the next clip; opens the microphone when it is closed. To be called from a click or key. */
  async start(): Promise<void> {
    await this.open()
    if (this.microphone === null) return
    this.put({ trouble: null })
    this.step({ kind: 'start' })
  }

  /** Calls settling off, or ends the clip here. */
  stop(): void {
    this.step({ kind: 'stop' })
  }

  /** Gives the microphone back; nothing while a clip is made. */
  shut(): void {
    if (!isBusy(this.state.recording.phase)) this.close()
  }

  /** The screen is left: what is being recorded goes on to its end. */
  leave(): void {
    this.left = true
    this.setHandsFree(false)
    if (this.state.recording.phase === 'settling') this.stop()
    if (!isBusy(this.state.recording.phase)) this.close()
  }

  choose(point: ListenPoint): void {
    const line = this.line
    if (line === null) return
    this.step({ kind: 'choose', slot: slotAt(point, this.way(), sweepSoFar(line, this.sweepName(line))) })
  }

  /** The air the next clip is to be recorded with. */
  chooseAir(air: 'on' | 'off'): void {
    const { slot } = this.state.recording
    if (slot !== null) this.step({ kind: 'choose', slot: { ...slot, air, staysPut: slot.staysPut && air === 'off' } })
  }

  /** The clip recorded last once more, as another take. */
  async again(): Promise<void> {
    const { last } = this.state
    if (last === null || this.line === null) return
    this.step({
      kind: 'choose',
      slot: slotAgain(last.slot, this.way(), sweepSoFar(this.line, this.sweepName(this.line))),
    })
    await this.start()
  }

  setHandsFree(handsFree: boolean): void {
    this.step({ kind: 'handsFree', handsFree })
    if (handsFree) void this.open()
  }

  async setMonitoring(monitoring: boolean): Promise<void> {
    if (this.ears === null) return
    this.put({ monitoring })
    await this.ears.setMonitoring(monitoring)
  }

  /** Another sweep for what is recorded from now on. */
  chooseSweep(name: string): void {
    if (isBusy(this.state.recording.phase)) return
    this.put({ sweep: name })
    this.chooseFirst()
  }

  /** Another microphone, as the settings say by now. */
  async reopen(): Promise<void> {
    if (this.microphone === null || isBusy(this.state.recording.phase)) return
    this.close()
    await this.open()
  }

  /** Name of the sweep that clips of a line join. */
  sweepName(line: JobLine): string {
    return this.state.sweep ?? recordInto(line)
  }

  private step(event: RecordingEvent): void {
    const before = this.state.recording
    const recording = nextRecording(before, event)
    if (recording === before) return
    this.put({ recording })
    if (recording.phase === 'recording' && before.phase === 'settling') void this.begin(recording)
    if (recording.phase === 'recording' && recording.endedBy !== null && before.endedBy === null) this.endClip()
    if (recording.phase === 'keeping' && before.phase === 'recording') this.ended(recording)
  }

  private take(report: CaptureReport): void {
    const rateHz = this.microphone?.context.sampleRate
    if (rateHz === undefined) return
    if (report.kind === 'recorded') {
      this.step({ kind: 'recorded', recordedS: report.frames / rateHz, isWhole: report.isWhole })
      return
    }
    const { endFrame, frames, power, peak } = report
    this.channelCount = report.channelCount
    const block = { atS: endFrame / rateHz, durationS: frames / rateHz, power, peak }
    for (const listener of this.blockListeners) listener(block)
    const joined = this.joined === null ? block : joinBlocks(this.joined, block)
    const isLong = joined.durationS >= SHOWN_BLOCK_S
    this.joined = isLong ? null : joined
    if (isLong) this.step({ kind: 'heard', block: joined })
  }

  private async begin({ slot, wantedS }: RecordingState): Promise<void> {
    const { microphone, line } = this
    const { job, device } = this.parts.store.get()
    if (microphone === null || slot === null || job === null || line === null) return this.endEmpty()
    const rateHz = microphone.context.sampleRate
    const recording: KeptRecording = {
      id: newId(),
      jobId: job.id,
      lineId: line.id,
      sweep: this.sweepName(line),
      slot,
      contact: device.listen.contact,
      timeS: this.nowS(),
      about: {
        device: microphone.device.slice(0, 500),
        sampleRateHz: rateHz,
        channelCount: this.channelCount,
        settings: microphone.settings,
        wantedS,
      },
    }
    this.current = recording
    try {
      await beginRecording(this.parts.database, recording)
    } catch (error) {
      this.put({ trouble: troubleOfKeeping(isFull(error), String(error)) })
      return this.endEmpty()
    }
    if (this.state.recording.phase !== 'recording') return void this.keep()
    const [frames, chunkFrames] = [Math.round(wantedS * rateHz), Math.round(CHUNK_S * rateHz)]
    microphone.command({ kind: 'record', id: recording.id, frames, chunkFrames })
    if (this.state.recording.endedBy !== null) microphone.command({ kind: 'stop' })
  }

  private endClip(): void {
    this.microphone?.command({ kind: 'stop' })
  }

  /** Nothing could be recorded: goes on as if the clip had ended. */
  private endEmpty(): void {
    this.step({ kind: 'recorded', recordedS: 0, isWhole: true })
    void this.keep()
  }

  private ended({ endedBy }: RecordingState): void {
    if (document.visibilityState === 'visible') void this.ears?.signalEnd(endedBy === null)
  }

  private cut(endedBy: EarlyEnd): void {
    this.step({ kind: 'cut', endedBy })
  }

  private gone(): void {
    const isRecording = this.state.recording.phase === 'recording'
    if (isRecording) {
      this.endClip()
      setTimeout(() => {
        if (this.current !== null) void this.keep()
      }, GONE_MS)
    }
    this.put({ trouble: { key: 'mic_unplugged', values: {} } })
    this.step({ kind: 'gone', endedBy: 'unplugged' })
    if (!isRecording) this.close()
  }

  private chunkLost(id: string, full: boolean): void {
    if (this.current?.id !== id) return
    this.put({ trouble: troubleOfKeeping(full, '') })
    this.cut('full')
  }

  /** Puts the clip that has ended into its job. */
  private async keep(): Promise<void> {
    const { current } = this
    if (current === null) return this.goOn(null)
    this.current = null
    let kept: Slot | null = null
    try {
      const assembled = await this.keeper.assemble(current)
      if (assembled === null) {
        await this.keeper.forget(current.id)
        if (this.state.trouble === null) this.put({ trouble: { key: 'record_nothing', values: {} } })
      } else if (this.isOpen(current)) {
        const { sound, keptBits } = assembled
        const recording = { ...current.about, keptBits, endedBy: this.state.recording.endedBy }
        await this.putIntoJob(current, { sound, recording })
        kept = current.slot
      } else await this.parts.findLeft()
    } catch (error) {
      const full = error instanceof KeepingError ? error.full : isFull(error)
      this.put({ trouble: troubleOfKeeping(full, String(error)) })
      await this.parts.findLeft()
    }
    this.goOn(kept)
  }

  /** Its job and line are open, and may be changed here. */
  private isOpen({ jobId, lineId }: KeptRecording): boolean {
    const { job, session } = this.parts.store.get()
    return job?.id === jobId && !session.readOnly && job.lines.some(({ id }) => id === lineId)
  }

  private async putIntoJob(
    { id, lineId, sweep, slot, contact, timeS }: KeptRecording,
    heard: Pick<Parameters<typeof recordedClip>[0], 'sound' | 'recording'>,
  ): Promise<void> {
    const { store, saver } = this.parts
    const takenFiles = filesOf(store.get().job!, lineId)
    const clip = recordedClip({ ...heard, slot, sweep, contact, timeS, takenFiles })
    store.dispatch(addRecordedClip, { lineId, clip, sweepId: newId() })
    this.put({ last: { lineId, sweep, file: clip.row.file, slot } })
    await saver.flush()
    if (store.get().session.saving.state === 'failed') await this.parts.findLeft()
    else await this.keeper.forget(id)
  }

  private goOn(kept: Slot | null): void {
    const { line } = this
    const { slot, phase } = this.state.recording
    if (phase === 'closed') return
    const soFar = line && sweepSoFar(line, this.sweepName(line))
    const next =
      line === null || soFar === null
        ? null
        : kept === null
          ? slot
          : nextSlot(pointsOnLine(line), this.way(), soFar, kept)
    this.step({ kind: 'kept', next })
    if (kept !== null) this.sayNext(next)
    if (this.left || this.state.trouble?.key === 'mic_unplugged') this.close()
    void this.lookForRoom()
  }

  private sayNext(next: Slot | null): void {
    if (!this.parts.store.get().device.listen.speak) return
    if (next === null) speak(sentence('say_all_done', {}))
    else if (next.staysPut) speak(sentence('say_turn_off', {}))
    else speak(sentence(next.air === 'on' ? 'say_next_on' : 'say_next_off', { point: next.point }))
  }

  private close(): void {
    const { microphone } = this
    this.microphone = null
    this.ears = null
    this.joined = null
    if (microphone !== null) this.discard(microphone)
    this.wakeLock.release()
    this.put({ device: null, deviceId: null, monitoring: false })
    this.step({ kind: 'gone', endedBy: 'stopped' })
  }

  private discard(microphone: Microphone): void {
    microphone.close()
    this.step({ kind: 'gone', endedBy: 'stopped' })
  }

  private followStore(): void {
    const { session, device } = this.parts.store.get()
    if (session.readOnly) this.cut('stopped')
    if (device.listen.lengthS !== this.state.recording.wantedS) {
      this.step({ kind: 'lengthen', wantedS: device.listen.lengthS })
    }
    const line = shownLine(this.parts.store.get())
    if (line === this.line) return
    const isOther = line?.id !== this.line?.id
    this.line = line
    if (isBusy(this.state.recording.phase)) return
    if (isOther) {
      this.put({ sweep: null, last: null })
      this.chooseFirst()
    } else this.renewSlot()
  }

  /** The points or clips of the line have changed: what is next stays as far as it can. */
  private renewSlot(): void {
    const { slot } = this.state.recording
    const { line } = this
    if (line === null) return
    const point = pointsOnLine(line).find((each) => each.point === slot?.point)
    if (slot === null || point === undefined) {
      this.chooseFirst()
      return
    }
    const take = slot.staysPut ? slot.take : nextTake(slot.point, sweepSoFar(line, this.sweepName(line)))
    const isSame = take === slot.take && point.alongM === slot.alongM && point.offsetM === slot.offsetM
    if (!isSame) this.step({ kind: 'choose', slot: { ...slot, alongM: point.alongM, offsetM: point.offsetM, take } })
  }

  private chooseFirst(): void {
    const { line } = this
    const slot =
      line === null ? null : nextSlot(pointsOnLine(line), this.way(), sweepSoFar(line, this.sweepName(line)), null)
    this.step({ kind: 'choose', slot })
  }

  private way() {
    return this.parts.store.get().device.listen.way
  }

  private nowS(): number {
    const { timeS, setBackS, start } = steadyTime(this.clocks, bothClocks())
    this.clocks = start
    if (setBackS > 0) this.put({ trouble: { key: 'clock_set_back', values: { back_s: setBackS } } })
    return timeS
  }

  private async listDevices(): Promise<void> {
    this.put({ devices: await listMicrophones() })
  }

  private async lookForRoom(): Promise<void> {
    this.put({ freeBytes: await freeBytes() })
  }

  private put(change: Partial<RecorderState>): void {
    this.state = { ...this.state, ...change }
    for (const listener of this.listeners) listener()
  }
}

function bothClocks() {
  return { wallS: Date.now() / 1000, runningS: performance.now() / 1000 }
}

function joinBlocks(a: HeardBlock, b: HeardBlock): HeardBlock {
  const durationS = a.durationS + b.durationS
  const power = (a.power * a.durationS + b.power * b.durationS) / durationS
  return { atS: b.atS, durationS, power, peak: Math.max(a.peak, b.peak) }
}

function troubleOfKeeping(full: boolean, why: string): Keyed {
  return full ? { key: 'record_full', values: {} } : { key: 'record_not_kept', values: { why } }
}
