import type { Problem } from '../base/problem'
import { quantile } from '../base/statistics'
import { powerToDb } from '../base/units'
import type { Clip } from './clip'
import { audioProblem } from './problems'
import { bassPower } from './quality/bassPower'
import { type ClipScan, clipScan } from './quality/clipScan'
import { deadBlocks } from './quality/deadBlocks'
import { flatTops } from './quality/flatTops'
import { gainRiding } from './quality/gainRiding'
import { gridStep } from './quality/gridStep'
import { knocks } from './quality/knocks'
import { mainsHum } from './quality/mainsHum'
import { sharpEdge } from './quality/sharpEdge'
import { voiceShare } from './quality/voiceShare'
import { windRumble } from './quality/windRumble'

/** Shorter than this, a clip tells nothing; shorter than that, little. */
const SPOILT_BELOW_S = 1 // chosen: a handful of bubbles
const WEAK_BELOW_S = 3 // chosen: less than one slow swell of the bubbling

/** A converter's step is never wider than that of 8 bits, so a wider one is a square wave's. */
const WIDEST_STEP = 1 / 128

/** Share of dead blocks for spoilt: in the rest there is room for the click of a plug. */
const SILENT_SPOILT_SHARE = 0.98 // chosen

/** Share of holes for weak. */
const SILENT_WEAK_SHARE = 0.1 // chosen

/** Level of the loudest tenth in steps below which the steps are heard: their noise is 0.29 steps, 20 dB under this. */
const FAINT_STEPS = 3

/** Flat samples, and blocks with any, for note, weak and spoilt. */
const CLIPPED_NOTE_SAMPLES = 8 // chosen
const CLIPPED_WEAK_SHARE = 0.0005 // noise cut at 3.5 times its standard deviation
const CLIPPED_WEAK_BLOCK_SHARE = 0.01 // chosen: one cut knock is no matter
const CLIPPED_SPOILT_SHARE = 0.1 // noise cut at 1.64 times its standard deviation loses 0.8 dB

/** Mean against the sound around it, and against full scale. */
const OFFSET_RATIO = 0.5 // chosen
const OFFSET_FULL_SCALE = 0.05 // chosen: takes half a decibel of headroom

const KNOCKED_WEAK_SHARE = 0.05 // chosen
const KNOCKED_SPOILT_SHARE = 0.5

const WINDY_SHARE = 0.75 // chosen: 5 dB over all the rest; bubbling of any kind heard so far stays below 0.4
const WINDY_SWELL_DB = 8 // chosen: steady rumble in half seconds wanders by 4 dB

const VOICE_NOTE_SHARE = 0.05 // chosen
const VOICE_WEAK_SHARE = 0.2 // chosen

const RIDING_DIPS = 2 // chosen
const RIDING_SHARE = 0.6 // chosen

/** An edge below this cuts into the bands that place the leak. */
const EDGE_WEAK_BELOW_HZ = 1_800 // bubbles of 2 mm and more ring at or below 1.6 kHz

/**
 * What is wrong with a clip, by name.
 *
 * Every judgement is by ratios within the clip, so gain does not matter, except where the converter's own step shows
 * through. Made to be right when it speaks rather than to find everything: clean bubbling in noise gets an empty list.
 *
 * @param samples The channel that evidence is taken from; finite.
 * @param sampleRateHz 8 000 to 192 000.
 * @param clip The clip it belongs to, for its encoding. The reader's own problems are not repeated.
 * @returns Problems of `AUDIO_PROBLEMS`; any `spoilt` one sets the clip aside, and then only reasons for that are given.
 */
export function clipQuality(samples: Float32Array, sampleRateHz: number, clip: Clip): Problem[] {
  const durationS = samples.length / sampleRateHz
  if (durationS < SPOILT_BELOW_S) return [audioProblem('too_short', 'spoilt', { duration_s: durationS })]
  const scan = clipScan(samples, sampleRateHz)
  const step = converterStep(samples, clip)
  const silent = silence(scan, step)
  if (silent?.severity === 'spoilt') return [silent]
  const bass = bassPower(scan)
  const problems = [
    durationS < WEAK_BELOW_S ? audioProblem('too_short', 'weak', { duration_s: durationS }) : null,
    silent,
    faintness(scan, step),
    clipping(samples, scan, step),
    offset(scan, step),
    hum(scan),
    knocking(scan, bass),
    wind(scan, bass),
    voice(scan),
    riding(scan),
    bandLimit(samples, sampleRateHz),
  ]
  return problems.filter((problem) => problem !== null)
}

/** Full scale; at least what the file's own bits allow. */
function converterStep(samples: Float32Array, clip: Clip): number {
  const told = clip.encoding.kind === 'pcm' ? 2 ** (1 - clip.encoding.bits) : 0
  const seen = gridStep(samples) ?? told
  return Math.max(told, seen > WIDEST_STEP * 1.01 ? 0 : seen)
}

function silence(scan: ClipScan, step: number): Problem | null {
  const { share, holeShare } = deadBlocks(scan, step)
  if (share >= SILENT_SPOILT_SHARE) return audioProblem('silent', 'spoilt', { share_percent: 100 * share })
  return holeShare < SILENT_WEAK_SHARE ? null : audioProblem('silent', 'weak', { share_percent: 100 * holeShare })
}

/** By the loudest tenth: bubbles that stand out of a floor below the steps were recorded well enough. */
function faintness(scan: ClipScan, step: number): Problem | null {
  const power = quantile(scan.power, 0.9)
  const level = powerToDb(power)
  if (level === null || Math.sqrt(power) >= FAINT_STEPS * step) return null
  return audioProblem('faint', 'weak', { level_dbfs: level })
}

function clipping(samples: Float32Array, scan: ClipScan, step: number): Problem | null {
  const { samples: flat, sampleShare, blockShare } = flatTops(samples, scan, step)
  if (flat < CLIPPED_NOTE_SAMPLES) return null
  const weak = sampleShare >= CLIPPED_WEAK_SHARE && blockShare >= CLIPPED_WEAK_BLOCK_SHARE
  const severity = sampleShare >= CLIPPED_SPOILT_SHARE ? 'spoilt' : weak ? 'weak' : 'note'
  return audioProblem('clipped', severity, { share_percent: 100 * sampleShare })
}

function offset(scan: ClipScan, step: number): Problem | null {
  const mean = scan.mean.reduce((sum, one) => sum + one, 0) / scan.mean.length
  const around = scan.power.reduce((sum, one, i) => sum + one + (scan.mean[i]! - mean) ** 2, 0) / scan.power.length
  const off = Math.abs(mean)
  const large = off > OFFSET_FULL_SCALE || (off > OFFSET_RATIO * Math.sqrt(around) && off > 2 * step)
  return large ? audioProblem('dc_offset', 'note', { offset_percent: 100 * mean }) : null
}

function hum(scan: ClipScan): Problem | null {
  const hz = mainsHum(scan)
  return hz === null ? null : audioProblem('mains_hum', 'note', { hz })
}

function knocking(scan: ClipScan, bass: Float64Array): Problem | null {
  const { count, share } = knocks(scan, bass)
  if (count === 0) return null
  const severity = share > KNOCKED_SPOILT_SHARE ? 'spoilt' : share > KNOCKED_WEAK_SHARE ? 'weak' : 'note'
  return audioProblem('knocked', severity, { count, share_percent: 100 * share })
}

function wind(scan: ClipScan, bass: Float64Array): Problem | null {
  const rumble = windRumble(scan, bass)
  if (rumble === null || rumble.bassShare < WINDY_SHARE || rumble.swellDb < WINDY_SWELL_DB) return null
  return audioProblem('windy', 'weak', { share_percent: 100 * rumble.bassShare, swell_db: rumble.swellDb })
}

function voice(scan: ClipScan): Problem | null {
  const share = voiceShare(scan)
  if (share < VOICE_NOTE_SHARE) return null
  return audioProblem('voice', share < VOICE_WEAK_SHARE ? 'note' : 'weak', { share_percent: 100 * share })
}

function riding(scan: ClipScan): Problem | null {
  const { dips, chances, dipDb } = gainRiding(scan)
  if (dips < RIDING_DIPS || dips < RIDING_SHARE * chances) return null
  return audioProblem('gain_riding', 'weak', { dip_db: dipDb, count: dips })
}

function bandLimit(samples: Float32Array, sampleRateHz: number): Problem | null {
  const hz = sharpEdge(samples, sampleRateHz)
  return hz === null ? null : audioProblem('band_limited', hz < EDGE_WEAK_BELOW_HZ ? 'weak' : 'note', { hz })
}
