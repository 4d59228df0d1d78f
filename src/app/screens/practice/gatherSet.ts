import { packedFormat } from '../../../../shared/audio/packedFormat'
import { writeWav } from '../../../../shared/audio/writeWav'
import { decodeText } from '../../../../shared/base/decodeText'
import { OPTIONS, type QuestionOrder } from '../../../../shared/practice/drills/question'
import type { ClipLabel } from '../../../../shared/practice/library/libraryClip'
import { libraryOfJob } from '../../../../shared/practice/library/libraryOfJob'
import { readLabelsCsv } from '../../../../shared/practice/library/readLabelsCsv'
import { type PracticeSet, SET_LIMITS, type SetClip, type SetDrill } from '../../../../shared/practice/set/practiceSet'
import type { Analyst } from '../../analysis/analyst'
import type { Database } from '../../storage/database'
import { listJobs, loadJob } from '../../storage/jobs'
import { loadSound } from '../../storage/sounds'
import { SetTrouble } from './useSets'

type NewSet = Omit<PracticeSet, 'id'>

/** Clips of a set out of the yard, and the level each stands at, dB: from easy to hard, over and over. Chosen. */
const YARD_CLIPS = 12
const YARD_LEVELS_DB = [18, 12, 8, 4]

/** Graded starting material out of the invented yard. */
export async function gatherFromYard(analyst: Analyst, name: string, drill: SetDrill, seed: string): Promise<NewSet> {
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
  return { name, drill, clips }
}

/** What stands for the clips of jobs: somebody says it for all of them. */
export interface ToldOfClips {
  readonly consent: boolean
  readonly licence: string
}

/** Clips of the jobs on this device where it is known what was found. */
export async function gatherFromJobs(database: Database, name: string, told: ToldOfClips): Promise<NewSet> {
  const clips: SetClip[] = []
  for (const { id } of (await listJobs(database)).jobs) {
    const job = await loadJob(database, id).catch(() => null)
    for (const { sha256, withoutSha256, ...entry } of job === null ? [] : libraryOfJob(job)) {
      const wav = await wavOf(database, sha256)
      if (wav === null || clips.length >= SET_LIMITS.clips) continue
      const without = withoutSha256 === null ? null : await wavOf(database, withoutSha256)
      const consent = told.consent ? 'given' : 'not told'
      clips.push({ ...entry, consent, licence: told.licence.trim(), wav, without })
    }
  }
  if (clips.length === 0) throw new SetTrouble({ key: 'practice_no_finished', values: {} })
  return { name, drill: 'leak', clips }
}

async function wavOf(database: Database, sha256: string): Promise<Uint8Array | null> {
  const sound = await loadSound(database, sha256)
  if (sound === null) return null
  const bytes = new Uint8Array(sound)
  return packedFormat(bytes) === null ? bytes : null
}

/** Clips of a folder with its labels; the drill is the one that most labels are of. */
export async function gatherFromFolder(files: readonly File[]): Promise<NewSet> {
  const sheet = files.find((file) => file.name.toLowerCase() === 'labels.csv')
  if (sheet === undefined) throw new SetTrouble({ key: 'practice_no_labels', values: {} })
  const top = pathOf(sheet).slice(0, -sheet.name.length)
  const text = decodeText(new Uint8Array(await sheet.arrayBuffer()), sheet.name).replace(/^\ufeff/, '')
  const labels = readLabelsCsv(text, sheet.name)
  const isYesNo = (label: string) => (OPTIONS.leak as readonly string[]).includes(label)
  const drill = labels.filter(({ label }) => isYesNo(label)).length * 2 >= labels.length ? 'leak' : 'what'
  const clips: SetClip[] = []
  for (const entry of labels) {
    const file = files.find((each) => pathOf(each) === `${top}${entry.file}`)
    if (file === undefined || isYesNo(entry.label) !== (drill === 'leak') || clips.length >= SET_LIMITS.clips) continue
    const bytes = new Uint8Array(await file.arrayBuffer())
    const folder = top.replace(/\/$/, '') || sheet.name
    if (packedFormat(bytes) === null)
      clips.push({ ...entry, source: entry.source || folder, wav: bytes, without: null })
  }
  if (clips.length === 0) throw new SetTrouble({ key: 'practice_no_labels', values: {} })
  return { name: (top.replace(/\/$/, '') || 'labels').slice(0, SET_LIMITS.name), drill, clips }
}

function pathOf(file: File): string {
  return file.webkitRelativePath || file.name
}
