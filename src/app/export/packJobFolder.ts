import type { Job, JobLine } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import type { FileToPack } from '../../worker/protocol'
import { soundBlob } from '../storage/sounds'
import { folderName, type PackedSweepFolder, type Packing } from './packSweepFolder'

/** A job as a zip of one folder: `job.json`, and under their digests the clips and photos it names, as they are kept. */
export async function packJobFolder(
  job: Job,
  { database, analyst, signal, onDone }: Packing,
): Promise<PackedSweepFolder> {
  const name = folderName(job.name)
  const json = new Blob([`${JSON.stringify(jobJson(job), null, 1)}\n`])
  const files: FileToPack[] = [{ path: `${name}/job.json`, bytes: json }]
  const wanted = job.lines.flatMap(keptOf)
  const paths = [...new Map(wanted.map(({ sha256, path }) => [sha256, path]))]
  for (const [sha256, path] of paths) {
    signal.throwIfAborted()
    const bytes = await soundBlob(database, sha256)
    if (bytes !== null) files.push({ path: `${name}/${path}`, bytes })
  }
  onDone(0, files.length)
  const zip = await analyst.call('zip', { files }, { signal, onPart: ({ done }) => onDone(done, files.length) })
  return { zip, name, lostCount: paths.length + 1 - files.length, notWavCount: 0 }
}

/** Of a digest as many digits as tell files apart. */
const NAME_DIGITS = 16

function keptOf({ sweeps, found = [], site }: JobLine): { readonly sha256: string; readonly path: string }[] {
  const clips = sweeps.flatMap(({ clips: all }) =>
    all.flatMap(({ row, sound }) =>
      sound === null ? [] : { sha256: sound.sha256, end: /\.\w{1,5}$/.exec(row.file)?.[0] },
    ),
  )
  const photos = [...found.map(({ photo }) => photo), site?.photo ?? null].flatMap((photo) => photo ?? [])
  return [
    ...clips.map(({ sha256, end = '.wav' }) => ({ sha256, path: `clips/${sha256.slice(0, NAME_DIGITS)}${end}` })),
    ...photos.map(({ sha256 }) => ({ sha256, path: `photos/${sha256.slice(0, NAME_DIGITS)}` })),
  ]
}
