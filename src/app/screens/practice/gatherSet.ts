import { packedFormat } from '../../../../shared/audio/packedFormat'
import { writeWav } from '../../../../shared/audio/writeWav'
import { decodeText } from '../../../../shared/base/decodeText'
import { OPTIONS, type QuestionOrder } from '../../../../shared/practice/drills/question'
import type { ClipLabel } from '../../../../shared/practice/library/libraryClip'
import { libraryOfJob } from '../../../../shared/practice/library/libraryOfJob'
import { readLabelsCsv } from '../../../../shared/practice/library/readLabelsCsv'
import { SET_LIMITS, type SetClip, type SetDrill } from '../../../../shared/practice/set/practiceSet'
import type { Keyed } from '../../../../shared/words/sentence'
import type { Analyst } from '../../analysis/analyst'
import type { Database } from '../../storage/database'
import { listJobs, loadJob } from '../../storage/jobs'
import { loadSound } from '../../storage/sounds'
import { type GatheredSet, SetTrouble } from './useSets'

/** Clips of a set out of the yard, and the level each stands at, dB: from easy to hard, over and over. Chosen. */
const YARD_CLIPS = 12
const YARD_LEVELS_DB = [18, 12, 8, 4]

/** Graded starting material out of the invented yard. */
export async function gatherFromYard(
  analyst: Analyst,
  name: string,
  drill: SetDrill,
  seed: string,
): Promise<GatheredSet> {
  const clips: SetClip[] = []
  for (let i = 0; i < YARD_CLIPS; i++) {
    const levelDb = YARD_LEVELS_DB[i % YARD_LEVELS_DB.length]!
    const order: QuestionOrder = { drill, seed: `${seed}/${i + 1}`, levelDb }
    const { truth, clips: made } = await analyst.call('practice', order)
    const { clip, without } = made[0]!
    clips.push({
      file: `${i + 1}.wav`,
      label: truth as ClipLabel,
      source: `synthetic yard, ${levelDb} dB`,
      consent: 'invented',
      licence: 'CC0-1.0',
      invented: true,
      job: '',
      alongM: null,
      leakAtM: null,
      cover: '',
      device: '',
      wav: writeWav(clip),
      without: without === null ? null : writeWav(without),
    })
  }
  return { set: { name, drill, clips }, leftOut: [] }
}

/** What stands for the clips of jobs: somebody says it for all of them. */
export interface ToldOfClips {
  readonly consent: boolean
  readonly licence: string
}

/**
 * Clips of the jobs on this device where it is known what was found.
 *
 * @param isHidden Jobs that are to be heard blind first: what was found there is not told by a label either.
 */
export async function gatherFromJobs(
  database: Database,
  name: string,
  told: ToldOfClips,
  isHidden: (jobId: string) => boolean,
): Promise<GatheredSet> {
  const clips: SetClip[] = []
  const leftOut: Keyed[] = []
  for (const { id } of (await listJobs(database)).jobs) {
    if (isHidden(id)) continue
    const job = await loadJob(database, id).catch(() => null) // one that cannot be read says so when it is opened
    for (const { sha256, withoutSha256, ...entry } of job === null ? [] : libraryOfJob(job)) {
      const wav = await wavOf(database, sha256)
      const { file } = entry
      if (wav === null) leftOut.push({ key: 'practice_left_no_wav', values: { file } })
      else if (clips.length >= SET_LIMITS.clips) leftOut.push({ key: 'practice_left_full', values: { file } })
      if (wav === null || clips.length >= SET_LIMITS.clips) continue
      const without = withoutSha256 === null ? null : await wavOf(database, withoutSha256)
      const consent = entry.invented ? 'invented' : told.consent ? 'given' : 'not told'
      clips.push({ ...entry, consent, licence: told.licence.trim(), wav, without })
    }
  }
  if (clips.length === 0) throw new SetTrouble({ key: 'practice_no_finished', values: {} }, shortened(leftOut))
  return { set: { name, drill: 'leak', clips }, leftOut: shortened(leftOut) }
}

async function wavOf(database: Database, sha256: string): Promise<Uint8Array | null> {
  const sound = await loadSound(database, sha256)
  if (sound === null) return null
  const bytes = new Uint8Array(sound)
  return packedFormat(bytes) === null ? bytes : null
}

/** Clips of a folder with its labels; the drill is the one that most labels are of. */
export async function gatherFromFolder(files: readonly File[]): Promise<GatheredSet> {
  const sheet = files.find((file) => file.name.toLowerCase() === 'labels.csv')
  if (sheet === undefined) throw new SetTrouble({ key: 'practice_no_labels', values: {} })
  const top = pathOf(sheet).slice(0, -sheet.name.length)
  const text = decodeText(new Uint8Array(await sheet.arrayBuffer()), sheet.name).replace(/^\ufeff/, '')
  const labels = readLabelsCsv(text, sheet.name)
  const isYesNo = (label: string) => (OPTIONS.leak as readonly string[]).includes(label)
  const drill = labels.filter(({ label }) => isYesNo(label)).length * 2 >= labels.length ? 'leak' : 'what'
  const clips: SetClip[] = []
  const leftOut: Keyed[] = []
  const folder = top.replace(/\/$/, '') || sheet.name
  for (const entry of labels) {
    const bytes = await bytesOf(files.find((each) => pathOf(each) === `${top}${entry.file}`))
    const why =
      bytes === null
        ? 'practice_left_missing'
        : isYesNo(entry.label) !== (drill === 'leak')
          ? 'practice_left_other_drill'
          : packedFormat(bytes) !== null
            ? 'practice_left_no_wav'
            : clips.length >= SET_LIMITS.clips
              ? 'practice_left_full'
              : null
    if (why !== null) leftOut.push({ key: why, values: { file: entry.file } })
    else if (bytes !== null) clips.push({ ...entry, source: entry.source || folder, wav: bytes, without: null })
  }
  if (clips.length === 0) throw new SetTrouble({ key: 'practice_no_labels', values: {} }, shortened(leftOut))
  return { set: { name: folder.slice(0, SET_LIMITS.name), drill, clips }, leftOut: shortened(leftOut) }
}

async function bytesOf(file: File | undefined): Promise<Uint8Array | null> {
  return file === undefined ? null : new Uint8Array(await file.arrayBuffer())
}

/** So many clips that were left out are told one by one. Chosen: more are not read. */
const MOST_TOLD = 8

function shortened(leftOut: readonly Keyed[]): readonly Keyed[] {
  if (leftOut.length <= MOST_TOLD) return leftOut
  const more = { key: 'practice_left_more', values: { count: leftOut.length - MOST_TOLD } }
  return [...leftOut.slice(0, MOST_TOLD), more]
}

function pathOf(file: File): string {
  return file.webkitRelativePath || file.name
}
