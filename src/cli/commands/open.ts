import { jobJson } from '../../../shared/job/jobJson'
import { sweepFolder } from '../../../shared/job/sweepFolder'
import { opinionFile } from '../../../shared/opinion/opinionFile'
import type { Args } from '../args'
import { TemporaryBytes } from '../byteFiles'
import { CallError } from '../callError'
import { prepareFolder, writeFile } from '../files'
import { jobText, openJob } from '../jobFiles'
import { pageWidth, print } from '../print'

/** `yardhark open FILE --out FOLDER`: a job file as sweep folders, one a line, beside the job itself. */
export async function openCommand({ rest, options }: Args): Promise<void> {
  const [path, ...more] = rest
  if (path === undefined || more.length > 0) throw new CallError('open takes one job file; yardhark open --help')
  const folder = options.get('out')
  if (folder === undefined) throw new CallError('open needs the folder to write into; add --out FOLDER')
  const bytes = new TemporaryBytes()
  try {
    const { job, problems } = await openJob(path, bytes)
    prepareFolder(folder, options.has('force'))
    const text = (content: string) => new TextEncoder().encode(content)
    writeFile(folder, 'job.json', text(`${JSON.stringify(jobJson(job), null, 1)}\n`))
    if (job.opinions) writeFile(folder, 'opinions.json', text(opinionFile(job, job.opinions)))
    for (const [i, line] of job.lines.entries()) {
      const sweeps = sweepFolder(line)
      if (sweeps === null) continue
      const name = job.lines.length === 1 ? 'line' : `line-${i + 1}`
      writeFile(folder, `${name}/sweep.csv`, text(sweeps.sheet))
      writeFile(folder, `${name}/line.json`, text(sweeps.line))
      for (const { path: file, sound } of sweeps.files) {
        const clip = bytes.load(sound.sha256)
        if (clip !== null) writeFile(folder, `${name}/${file}`, clip)
      }
    }
    await print(jobText(job, problems, pageWidth()))
  } finally {
    bytes.close()
  }
}
