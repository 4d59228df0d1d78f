import type { JobLine } from '../../../shared/job/job'
import { recordInto } from '../../../shared/record/recordInto'
import { isBusy, nextRecording, type RecordingEvent, type RecordingState } from '../../../shared/record/recordingState'
import type { HeardBlock } from '../../../shared/record/settling'
import type { ListenPoint, Slot } from '../../../shared/record/slot'
import type { EarlyEnd } from '../../../shared/sweep/phoneAccount'
import { newId } from '../newId'
import type { KeptRecording } from '../storage/database'
import { askToPersist, freeBytes } from '../storage/room'
import { withSession } from '../store/changes'
import { shownLine } from '../store/selectors/shownLine'
import { ClipClock } from './clipClock'
import { ClipKeeping, type ClipKeepingParts } from './clipKeeping'
import { listMicrophones, MicrophoneError } from './microphone'
import { OpenEar } from './openEar'
import { FIRST_RECORDER_STATE, type RecorderState } from './recorderState'
import { SlotChoice } from './slotChoice'
import { sayNext } from './speak'
import { Watched } from './watched'

/** How long the last chunk of a microphone that has gone is waited for, ms. */
const GONE_MS = 1500

/**
 * Records clips at points into the open job: does what `nextRecording` decides. Owns the microphone while it is open.
 */
export class Recorder extends Watched<RecorderState> {
  private readonly blockListeners = new Set<(block: HeardBlock) => void>()
  private readonly clips: ClipKeeping
  private readonly clock = new ClipClock()
  private ear: OpenEar | null = null
  private line: JobLine | null = null
  /** The screen was left: the microphone goes as soon as nothing is recorded. */
  private left = false

  constructor(private readonly parts: ClipKeepingParts) {
    super(FIRST_RECORDER_STATE)
    this.clips = new ClipKeeping(parts, {
      onEnd: () => void this.keep(),
      onLost: (trouble) => {
        this.put({ trouble })
        this.cut('full')
      },
    })
    parts.store.subscribe(() => this.followStore())
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') this.cut('hidden')
    })
    navigator.mediaDevices?.addEventListener('devicechange', () => void this.listDevices())
    this.followStore()
    void this.lookForRoom()
  }

  /** Blocks of 20 ms as they are heard, for the tap test. */
  readonly onBlock = (listener: (block: HeardBlock) => void): (() => void) => {
    this.blockListeners.add(listener)
    return () => this.blockListeners.delete(listener)
  }

  /** For the live spectrum; `null` while no microphone is open. */
  analyser(): AnalyserNode | null {
    return this.ear?.microphone.analyser ?? null
  }

  /** Opens the microphone. To be called from a click or key. */
  async open(): Promise<void> {
    this.left = false
    if (this.state.recording.phase !== 'closed') return
    this.step({ kind: 'open' })
    this.put({ trouble: null })
    try {
      const ear = await OpenEar.open(this.listenSettings().deviceId, () => this.clips.sink(), {
        onBlock: (block) => {
          for (const listener of this.blockListeners) listener(block)
        },
        onHeard: (block) => this.step({ kind: 'heard', block }),
        onRecorded: (recordedS, isWhole) => this.step({ kind: 'recorded', recordedS, isWhole }),
        onGone: () => this.gone(),
        onHeldBack: () => this.cut('hidden'),
      })
      this.ear = ear
      if (this.left) return this.close()
      this.put({ device: ear.microphone.device, deviceId: ear.microphone.deviceId })
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
    if (this.ear === null || this.parts.store.get().session.handingOver) return
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
    const slot = this.choice()?.at(point)
    if (slot !== undefined) this.step({ kind: 'choose', slot })
  }

  /** The air the next clip is to be recorded with. */
  chooseAir(air: 'on' | 'off'): void {
    const { slot } = this.state.recording
    if (slot !== null) this.step({ kind: 'choose', slot: { ...slot, air, staysPut: slot.staysPut && air === 'off' } })
  }

  /** The clip recorded last once more, as another take. */
  async again(): Promise<void> {
    const { last } = this.state
    const choice = this.choice()
    if (last === null || choice === null) return
    this.step({ kind: 'choose', slot: choice.again(last.slot) })
    await this.start()
  }

  setHandsFree(handsFree: boolean): void {
    this.step({ kind: 'handsFree', handsFree })
    if (handsFree) void this.open()
  }

  async setMonitoring(monitoring: boolean): Promise<void> {
    if (this.ear === null) return
    this.put({ monitoring })
    await this.ear.ears.setMonitoring(monitoring)
  }

  /** Another sweep for what is recorded from now on. */
  chooseSweep(name: string): void {
    if (isBusy(this.state.recording.phase)) return
    this.put({ sweep: name })
    this.chooseFirst()
  }

  /** Another microphone, as the settings say by now. */
  async reopen(): Promise<void> {
    if (this.ear === null || isBusy(this.state.recording.phase)) return
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
    this.tellBusy(isBusy(recording.phase) || this.clips.isUnderWay)
    if (recording.phase === 'recording' && before.phase === 'settling') void this.begin(recording)
    if (recording.phase === 'recording' && recording.endedBy !== null && before.endedBy === null) this.ear?.endClip()
    if (recording.phase === 'keeping' && before.phase === 'recording') this.ended(recording)
  }

  private tellBusy(recording: boolean): void {
    const { store } = this.parts
    if (store.get().session.recording !== recording) store.update((state) => withSession(state, { recording }))
  }

  private async begin({ slot, wantedS }: RecordingState): Promise<void> {
    const { ear } = this
    const recording = ear === null || slot === null ? null : this.newRecording(ear, slot, wantedS)
    if (ear === null || recording === null) return this.endEmpty()
    const trouble = await this.clips.begin(recording)
    if (trouble !== null) {
      this.put({ trouble })
      return this.endEmpty()
    }
    if (this.state.recording.phase !== 'recording') return void this.keep()
    ear.record(recording.id, wantedS)
    if (this.state.recording.endedBy !== null) ear.endClip()
  }

  private newRecording(ear: OpenEar, slot: Slot, wantedS: number): KeptRecording | null {
    const { line } = this
    const { job } = this.parts.store.get()
    if (job === null || line === null) return null
    const place = { jobId: job.id, lineId: line.id, sweep: this.sweepName(line), slot }
    return {
      id: newId(),
      ...place,
      contact: this.listenSettings().contact,
      timeS: this.nowS(),
      about: ear.about(wantedS),
    }
  }

  /** Nothing could be recorded: goes on as if the clip had ended. */
  private endEmpty(): void {
    this.step({ kind: 'recorded', recordedS: 0, isWhole: true })
    void this.keep()
  }

  private ended({ endedBy }: RecordingState): void {
    if (document.visibilityState === 'visible') void this.ear?.ears.signalEnd(endedBy === null)
  }

  private cut(endedBy: EarlyEnd): void {
    this.step({ kind: 'cut', endedBy })
  }

  private gone(): void {
    const isRecording = this.state.recording.phase === 'recording'
    if (isRecording) {
      this.ear?.endClip()
      setTimeout(() => {
        if (this.clips.hasBegun) void this.keep()
      }, GONE_MS)
    }
    this.put({ trouble: { key: 'mic_unplugged', values: {} } })
    this.step({ kind: 'gone', endedBy: 'unplugged' })
    if (!isRecording) this.close()
  }

  /** Has the clip that has ended put into its job, and goes on. */
  private async keep(): Promise<void> {
    const { clip, trouble } = await this.clips.keep(this.state.recording.endedBy)
    const isNews = trouble !== null && (trouble.key !== 'record_nothing' || this.state.trouble === null)
    if (isNews) this.put({ trouble })
    if (clip !== null) this.put({ last: clip })
    this.goOn(clip?.slot ?? null)
  }

  private goOn(kept: Slot | null): void {
    const choice = this.choice()
    const { slot, phase } = this.state.recording
    this.tellBusy(false)
    if (phase === 'closed') return
    const next = choice === null ? null : kept === null ? slot : choice.after(kept)
    this.step({ kind: 'kept', next })
    if (kept !== null && this.listenSettings().speak) sayNext(next)
    if (this.left || this.state.trouble?.key === 'mic_unplugged') this.close()
    void this.lookForRoom()
  }

  private close(): void {
    this.ear?.close()
    this.ear = null
    this.put({ device: null, deviceId: null, monitoring: false })
    this.step({ kind: 'gone', endedBy: 'stopped' })
  }

  private followStore(): void {
    const { session } = this.parts.store.get()
    if (session.readOnly || session.handingOver) this.cut('stopped')
    const { lengthS } = this.listenSettings()
    if (lengthS !== this.state.recording.wantedS) this.step({ kind: 'lengthen', wantedS: lengthS })
    const line = shownLine(this.parts.store.get())
    if (line === this.line) return
    const isOther = line?.id !== this.line?.id
    this.line = line
    if (isBusy(this.state.recording.phase)) return
    if (isOther) {
      this.put({ sweep: null, last: null })
      this.chooseFirst()
      return
    }
    const { slot } = this.state.recording
    const renewed = this.choice()?.renewed(slot) ?? null
    if (renewed !== slot) this.step({ kind: 'choose', slot: renewed })
  }

  private chooseFirst(): void {
    this.step({ kind: 'choose', slot: this.choice()?.after(null) ?? null })
  }

  private choice(): SlotChoice | null {
    const { line } = this
    return line === null ? null : new SlotChoice(line, this.listenSettings().way, this.sweepName(line))
  }

  private listenSettings() {
    return this.parts.store.get().device.listen
  }

  private nowS(): number {
    const { timeS, setBackS } = this.clock.tell()
    if (setBackS > 0) this.put({ trouble: { key: 'clock_set_back', values: { back_s: setBackS } } })
    return timeS
  }

  private readonly listDevices = async () => this.put({ devices: await listMicrophones() })
  private readonly lookForRoom = async () => this.put({ freeBytes: await freeBytes() })
}
