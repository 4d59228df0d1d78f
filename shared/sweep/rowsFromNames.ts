import { FormatError, InputError } from '../base/errors'
import type { Problem } from '../base/problem'
import { printable } from '../base/shown'
import { CSV_LIMITS } from './csvRecords'
import type { Sweep, SweepRow } from './sweep'

/** How numbered clips lie on the line when no sheet says so, m. */
export interface NumberedLayout {
  /** Where the lowest number lies. */
  readonly startM: number
  /** From one number to the next, > 0. */
  readonly spacingM: number
}

/** As in a sheet. Chosen: far past any yard; a name that leads there is a date or a counter. */
const MOST_ALONG_M = 10_000

/** Names of recordings; anything else in a folder is no clip and not worth a word. */
const AUDIO = /\.(?:wav|wave|bwf|rf64|flac|ogg|oga|opus|mp3|m4a|aac|aif|aiff|caf|wma|amr|3gp)$/i
const NUMBERED = /^(\d{1,6})(?:-(on|off))?(?:-take(\d{1,6}))?\.wav$/i

/**
 * The rows of a sweep folder without a sheet, from clips named `N[-on|-off][-takeK].wav`.
 *
 * Point n lies at start + (n − lowest) × spacing: a gap in the numbers is a gap in the ground. Any case; leading zeros
 * are free; a name without `-on` or `-off` is air on. Clips whose names say the same take share a setting-down.
 *
 * @param names  Names in the folder, in any order, without path.
 * @returns Rows by point, then take, air on before off; every other recording as a problem.
 * @throws {FormatError} two names for one point, take and air; more clips than a sheet may name; a point past 10 km.
 * @throws {InputError} spacing not above 0, start not finite.
 */
export function rowsFromNames(names: readonly string[], { startM, spacingM }: NumberedLayout): Sweep {
  if (!(spacingM > 0 && spacingM < Number.POSITIVE_INFINITY))
    throw new InputError(`spacingM is ${spacingM}; must be > 0`)
  if (!Number.isFinite(startM)) throw new InputError(`startM is ${startM}; must be finite`)
  const clips: NumberedName[] = []
  const problems: Problem[] = []
  for (const name of [...names].sort(byCodeUnits)) {
    const numbered = numberedName(name)
    if (numbered !== null) clips.push(numbered)
    else if (AUDIO.test(name)) {
      problems.push({ key: 'name_not_numbered', severity: 'note', values: { file: printable(name) } })
    }
  }
  clips.sort((a, b) => a.point - b.point || a.take - b.take || Number(a.air === 'off') - Number(b.air === 'off'))
  refuseDuplicates(clips)
  const beyond = clips[CSV_LIMITS.records]
  if (beyond) {
    const mend = `there are ${clips.length} clips, and at most ${CSV_LIMITS.records} are read; keep one sweep in a folder`
    throw new FormatError(printable(beyond.name), '', mend)
  }
  const lowest = clips[0]?.point ?? 0
  return { rows: clips.map((clip) => rowOf(clip, alongOf(clip, startM + (clip.point - lowest) * spacingM))), problems }
}

interface NumberedName {
  readonly name: string
  readonly point: number
  readonly air: 'on' | 'off'
  readonly take: number
  readonly takeTold: boolean
}

function numberedName(name: string): NumberedName | null {
  const found = NUMBERED.exec(name)
  if (found === null) return null
  const [, point, air = 'on', take] = found
  return {
    name,
    point: Number(point),
    air: air.toLowerCase() as 'on' | 'off',
    take: Number(take ?? 1),
    takeTold: take !== undefined,
  }
}

function refuseDuplicates(sorted: readonly NumberedName[]): void {
  for (const [i, clip] of sorted.entries()) {
    const next = sorted[i + 1]
    if (next && next.point === clip.point && next.take === clip.take && next.air === clip.air) {
      const what = `is point ${clip.point}, take ${clip.take}, air ${clip.air}, as ${printable(clip.name)} is`
      throw new FormatError(printable(next.name), '', `${what}; name one of them ${clip.point}-${clip.air}-take2.wav`)
    }
  }
}

function alongOf(clip: NumberedName, alongM: number): number {
  if (Math.abs(alongM) <= MOST_ALONG_M) return alongM
  const where = `would lie ${Math.round(alongM)} m along, and at most ${MOST_ALONG_M} m are read`
  throw new FormatError(printable(clip.name), '', `${where}; name it by its point, or write a sweep.csv`)
}

function rowOf(clip: NumberedName, alongM: number): SweepRow {
  return {
    point: clip.point,
    alongM,
    file: clip.name,
    air: clip.air,
    take: clip.take,
    sharedTake: clip.takeTold,
    sweep: '1',
    offsetM: 0,
    timeS: null,
    contact: null,
    airKpa: null,
    note: '',
    unknown: {},
  }
}

function byCodeUnits(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
