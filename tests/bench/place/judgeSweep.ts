import { clipEvidence } from '../../../shared/evidence/clipEvidence'
import type { LocateAnswer, Sounding, Verdict } from '../../../shared/locate/answer'
import { locate } from '../../../shared/locate/locate'
import { shortestWindow } from '../../../shared/locate/window'
import { drawnEvidence } from '../../../shared/synth/drawnEvidence'
import { drawYard } from '../../../shared/synth/drawYard'
import { familyNamed } from '../../../shared/synth/families'
import { positionBound } from '../../../shared/synth/positionBound'
import { renderClip } from '../../../shared/synth/renderClip'
import type { Yard, YardTruth } from '../../../shared/synth/yard'
import { loudestM, parabolaM } from './byEar'
import { densityCrps } from './densityCrps'
import { intervalScore } from './intervalScore'

export type Entry = 'drawn' | 'audio'

/** A sweep to be judged. */
export interface SweepOrder {
  readonly family: string
  readonly seed: string
  readonly entry: Entry
}

/** How one synthetic sweep came out. Distances in spacings; from the nearest leak's hole unless said otherwise. */
export interface Judged extends SweepOrder {
  readonly leaks: number
  readonly verdict: Verdict
  /** Of the first source, or of the first ranked point where none is listed; `null` without a leak, as all errors. */
  readonly error: number | null
  /** The same from where the sound leaves the bedding. */
  readonly exitError: number | null
  readonly loudestError: number | null
  readonly parabolaError: number | null
  /** Of the point that stands most over its floor in any band: an ear that knows the quiet clips. */
  readonly overFloorError: number | null
  /** Least standard deviation anybody could reach; `null` where it cannot be computed. */
  readonly bound: number | null
  /** Of the first source, or of the density where none is listed; `null`: the answer has neither, or no leak. */
  readonly window: { readonly width: number; readonly holds: boolean; readonly score: number } | null
  /** Of the density, single leaks only. */
  readonly crps: number | null
  readonly sources: number
  /** Leaks with a listed source within one spacing. */
  readonly found: number
  /** Of the faintest leak at the point nearest to it, dB. */
  readonly overFloorDb: number | null
  /** One leak of at least 12 dB, spacing at most two depths, two usable points on each side. */
  readonly isPlain: boolean
  /** Spoilt clips, how many of them were set aside with a reason, and other clips set aside. */
  readonly clips: { readonly spoilt: number; readonly named: number; readonly wronglyAside: number }
  /** Of processor time. */
  readonly drawS: number
  readonly locateS: number
}

/** Draws a yard, hears its sweep, locates and compares with the truth. */
export function judgeSweep(order: SweepOrder): Judged {
  const started = usedS()
  const yard = drawYard(familyNamed(order.family)!, order.seed)
  const soundings = soundingsOf(yard, order.entry)
  const drawn = usedS()
  const answer = locate({ line: yard.told, soundings })
  const located = usedS()
  return { ...order, ...judgeAnswer(yard, answer), drawS: drawn - started, locateS: located - drawn }
}

/** Processor time of this process so far: other work on the machine does not count. */
function usedS(): number {
  return process.cpuUsage().user / 1e6
}

/** Evidence of every clip of a yard, drawn at once or heard from its sound. */
function soundingsOf(yard: Yard, entry: Entry): Sounding[] {
  if (entry === 'drawn') return drawnEvidence(yard).map((drawn) => ({ ...drawn, problems: [] }))
  return yard.clips.map((plan) => ({ row: plan.row, evidence: clipEvidence(renderClip(yard, plan)), problems: [] }))
}

/** What an answer is worth against the truth. */
export function judgeAnswer(yard: Yard, answer: LocateAnswer): Omit<Judged, keyof SweepOrder | 'drawS' | 'locateS'> {
  const { truth } = yard
  const away = (alongM: number | null, leaksM = truth.leakAlongM) =>
    alongM === null || leaksM.length === 0 ? null : Math.abs(nearestTo(alongM, leaksM) - alongM) / truth.spacingM
  const alongM = answer.sources[0]?.alongM ?? answer.points[0]?.alongM ?? null
  const heard = answer.points.flatMap(({ alongM, evidence }) =>
    evidence.levelDbFs === null ? [] : [{ alongM, levelDb: evidence.levelDbFs }],
  )
  const standing = answer.points.flatMap(({ alongM, evidence }) =>
    evidence.overFloorDb === null ? [] : [{ alongM, levelDb: evidence.overFloorDb }],
  )
  const boundM = positionBound(yard)
  return {
    leaks: truth.leakAlongM.length,
    verdict: answer.verdict,
    error: away(alongM),
    exitError: away(alongM, truth.exitAlongM),
    loudestError: away(loudestM(heard)),
    parabolaError: away(parabolaM(heard)),
    overFloorError: away(loudestM(standing)),
    bound: boundM === null ? null : boundM / truth.spacingM,
    window: judgeWindow(answer, truth),
    crps: crpsOf(answer, truth),
    sources: answer.sources.length,
    found: truth.leakAlongM.filter((leakM) => answer.sources.some((s) => Math.abs(s.alongM - leakM) <= truth.spacingM))
      .length,
    overFloorDb: truth.overFloorDb.length === 0 ? null : Math.min(...truth.overFloorDb),
    isPlain: isPlain(yard, answer),
    clips: clipsSetAside(yard, answer),
  }
}

function nearestTo(alongM: number, leaksM: readonly number[]): number {
  return leaksM.reduce((a, b) => (Math.abs(b - alongM) < Math.abs(a - alongM) ? b : a))
}

/** Share of the density a window is made to hold where the answer lists no source. */
const PROBABILITY = 0.8

function judgeWindow({ sources, density }: LocateAnswer, { leakAlongM, spacingM }: YardTruth): Judged['window'] {
  if (leakAlongM.length === 0) return null
  const windowM =
    sources[0]?.windowM ?? (isSomewhere(density) ? shortestWindow(density.alongM, density.perM, PROBABILITY) : null)
  if (windowM === null) return null
  const [low, high] = windowM
  const leakM = nearestTo((low + high) / 2, leakAlongM)
  const probability = sources[0]?.windowProbability ?? PROBABILITY
  return {
    width: (high - low) / spacingM,
    holds: leakAlongM.some((each) => low <= each && each <= high),
    score: intervalScore(windowM, probability, leakM) / spacingM,
  }
}

function isSomewhere({ perM }: LocateAnswer['density']): boolean {
  return perM.some((density) => density > 0)
}

function crpsOf({ density }: LocateAnswer, { leakAlongM, spacingM }: YardTruth): number | null {
  if (leakAlongM.length !== 1 || !isSomewhere(density)) return null
  const scoreM = densityCrps(density.alongM, density.perM, leakAlongM[0]!)
  return scoreM === null ? null : scoreM / spacingM
}

function isPlain({ truth, clips }: Yard, answer: LocateAnswer): boolean {
  const { leakAlongM, overFloorDb, spacingM, depthM } = truth
  if (leakAlongM.length !== 1 || overFloorDb[0]! < 12 || spacingM > 2 * depthM) return false
  const used = new Set(answer.clips.filter((clip) => clip.used).map((clip) => clip.file))
  const heard = clips.filter(({ row }) => row.air === 'on' && used.has(row.file)).map(({ row }) => row.alongM)
  const placesM = [...new Set(heard)]
  const left = placesM.filter((alongM) => alongM < leakAlongM[0]!).length
  return left >= 2 && placesM.length - left >= 2
}

function clipsSetAside({ clips }: Yard, answer: LocateAnswer): Judged['clips'] {
  const aside = new Map(answer.clips.filter((clip) => !clip.used).map((clip) => [clip.file, clip]))
  const spoilt = clips.filter((plan) => plan.spoil !== null)
  const named = spoilt.filter(({ row }) => (aside.get(row.file)?.problems.length ?? 0) > 0)
  const wronglyAside = clips.filter((plan) => plan.spoil === null && aside.has(plan.row.file))
  return { spoilt: spoilt.length, named: named.length, wronglyAside: wronglyAside.length }
}
