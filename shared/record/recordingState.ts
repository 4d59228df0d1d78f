import type { EarlyEnd } from '../sweep/phoneAccount'
import { type HeardBlock, isSettled, SETTLED_AFTER_S } from './settling'
import type { Slot } from './slot'

/**
 * Where the recorder is. `closed`: no microphone. `open`: it is heard, nothing is recorded. `settling`: a moment's rest
 * before it. `keeping`: recorded, and on its way into the job.
 */
export type RecordingPhase = 'closed' | 'opening' | 'open' | 'settling' | 'recording' | 'keeping'

export interface RecordingState {
  readonly phase: RecordingPhase
  /** What is recorded now or next; `null` when everything is. */
  readonly slot: Slot | null
  /** How long clips are to be, s. */
  readonly wantedS: number
  /** Recording begins by itself once the sound has settled. */
  readonly handsFree: boolean
  /** Hands-free waits for the microphone to be taken up before it takes rest for being set down. */
  readonly armed: boolean
  /** Hands-free begins no sooner than this on the microphone's clock, s: somebody turns the air. */
  readonly notBeforeS: number
  /** Since when hands-free has waited, s. */
  readonly waitingSinceS: number
  readonly settled: boolean
  /** The microphone's own clock, s since it was opened: neither jumps nor stops with the device's clock. */
  readonly nowS: number
  /** When settling began, s. */
  readonly settlingFromS: number
  /** How much of the clip is recorded, s. */
  readonly recordedS: number
  /** Why the clip ended, or is about to end, before its time. */
  readonly endedBy: EarlyEnd | null
  readonly blocks: readonly HeardBlock[]
}

export type RecordingEvent =
  | { readonly kind: 'open' }
  | { readonly kind: 'opened' }
  /** It could not be opened, or has gone: also in the middle of a clip, which then ends as `endedBy` says. */
  | { readonly kind: 'gone'; readonly endedBy: EarlyEnd }
  | { readonly kind: 'heard'; readonly block: HeardBlock }
  | { readonly kind: 'start' }
  /** By hand: settling is called off, a clip ends. */
  | { readonly kind: 'stop' }
  /** The clip ends here for another reason; the microphone stays open. */
  | { readonly kind: 'cut'; readonly endedBy: EarlyEnd }
  | { readonly kind: 'recorded'; readonly recordedS: number; readonly isWhole: boolean }
  /** It is in the job, or could not be put there; what comes next. */
  | { readonly kind: 'kept'; readonly next: Slot | null }
  | { readonly kind: 'choose'; readonly slot: Slot | null }
  | { readonly kind: 'lengthen'; readonly wantedS: number }
  | { readonly kind: 'handsFree'; readonly handsFree: boolean }

/** A moment's rest between the tap and the clip, s: the hand that tapped is gone by then. */
export const SETTLE_S = 1

/** Hands-free gives somebody this long to turn the air between the halves of a setting-down, s. Chosen. */
export const AIR_TURN_S = 15

/** Hands-free does not wait longer than this for rest, s: a leak may gurgle for ever. Chosen. */
const PATIENCE_S = 8

/** A block this much over the rest is a hand on the microphone: 10 dB as a power ratio. Chosen. */
const HANDLED_RATIO = 10

export const FIRST_RECORDING: RecordingState = {
  phase: 'closed',
  slot: null,
  wantedS: 6,
  handsFree: false,
  armed: true,
  notBeforeS: 0,
  waitingSinceS: 0,
  settled: false,
  nowS: 0,
  settlingFromS: 0,
  recordedS: 0,
  endedBy: null,
  blocks: [],
}

/**
 * What the recorder does next. Pure: time comes in with what is heard, and the shell looks at the phase for what it has
 * to do (`recording`: collect samples; `keeping`: put them into the job).
 *
 * Events that do not fit the phase change nothing: a tap that came too late, a sample after the end.
 */
export function nextRecording(state: RecordingState, event: RecordingEvent): RecordingState {
  const { phase } = state
  switch (event.kind) {
    case 'open':
      return phase === 'closed' ? { ...state, phase: 'opening' } : state
    case 'opened':
      return phase === 'opening' ? { ...state, ...AFRESH, phase: 'open' } : state
    case 'gone':
      return gone(state, event.endedBy)
    case 'heard':
      return heard(state, event.block)
    case 'start':
      return phase === 'open' && state.slot !== null ? settling(state) : state
    case 'stop':
      return phase === 'settling' ? { ...state, phase: 'open', handsFree: false } : cut(state, 'stopped')
    case 'cut':
      return phase === 'settling' ? { ...state, phase: 'open', handsFree: false } : cut(state, event.endedBy)
    case 'recorded':
      return recorded(state, event.recordedS, event.isWhole)
    case 'kept':
      return phase === 'keeping' ? { ...state, ...waitFor(state, event.next), phase: 'open' } : state
    case 'choose':
      return isBusy(phase) ? state : { ...state, ...waitFor(state, event.slot), armed: true }
    case 'lengthen':
      return isBusy(phase) ? state : { ...state, wantedS: event.wantedS }
    case 'handsFree':
      return { ...state, handsFree: event.handsFree, armed: true, waitingSinceS: state.nowS }
  }
}

/** True while a clip is being made: nothing else can be chosen. */
export function isBusy(phase: RecordingPhase): boolean {
  return phase === 'settling' || phase === 'recording' || phase === 'keeping'
}

const AFRESH = { nowS: 0, blocks: [], settled: false, armed: true, notBeforeS: 0, waitingSinceS: 0 }

function settling(state: RecordingState): RecordingState {
  return { ...state, phase: 'settling', settlingFromS: state.nowS, recordedS: 0, endedBy: null }
}

function cut(state: RecordingState, endedBy: EarlyEnd): RecordingState {
  return state.phase === 'recording' && state.endedBy === null ? { ...state, endedBy } : state
}

function gone(state: RecordingState, endedBy: EarlyEnd): RecordingState {
  const closed = { ...state, ...AFRESH, handsFree: false }
  if (state.phase === 'recording') return { ...closed, phase: 'keeping', endedBy: state.endedBy ?? endedBy }
  if (state.phase === 'keeping') return closed
  return { ...closed, phase: 'closed' }
}

function recorded(state: RecordingState, recordedS: number, isWhole: boolean): RecordingState {
  if (state.phase !== 'recording') return state
  if (isWhole) return { ...state, recordedS, phase: 'keeping' }
  return { ...state, recordedS }
}

function heard(state: RecordingState, block: HeardBlock): RecordingState {
  const { phase } = state
  if (phase === 'closed' || phase === 'opening') return state
  const nowS = block.atS
  const blocks = [...state.blocks.filter(({ atS }) => atS > nowS - SETTLED_AFTER_S - 0.5), block]
  const isTakenUp = !state.armed && isHandled(state.blocks, block)
  const now = {
    ...state,
    nowS,
    blocks,
    settled: isSettled(blocks),
    armed: state.armed || isTakenUp,
    waitingSinceS: isTakenUp ? nowS : state.waitingSinceS,
  }
  if (phase === 'settling') return nowS - state.settlingFromS >= SETTLE_S ? { ...now, phase: 'recording' } : now
  return phase === 'open' && beginsByItself(now) ? settling(now) : now
}

function beginsByItself({ handsFree, armed, slot, settled, nowS, notBeforeS, waitingSinceS }: RecordingState): boolean {
  if (!handsFree || !armed || slot === null || nowS < notBeforeS) return false
  return settled || nowS - Math.max(waitingSinceS, notBeforeS) >= PATIENCE_S
}

function isHandled(before: readonly HeardBlock[], block: HeardBlock): boolean {
  const mean = before.reduce((sum, { power }) => sum + power, 0) / Math.max(1, before.length)
  return before.length > 0 && block.power > HANDLED_RATIO * mean
}

function waitFor(state: RecordingState, slot: Slot | null): Partial<RecordingState> {
  const staysPut = slot?.staysPut === true
  return {
    slot,
    armed: staysPut,
    notBeforeS: staysPut ? state.nowS + AIR_TURN_S : state.nowS,
    waitingSinceS: state.nowS,
    recordedS: 0,
    endedBy: null,
  }
}
