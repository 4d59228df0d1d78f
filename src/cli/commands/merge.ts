import { mergeJobs } from '../../../shared/job/merge/mergeJobs'
import { SHARE_ALL } from '../../../shared/jobfile/sharedJob'
import { readOpinionFile } from '../../../shared/opinion/opinionFile'
import { withOpinions } from '../../../shared/opinion/withOpinions'
import { sentence } from '../../../shared/words/sentence'
import type { Args } from '../args'
import { TemporaryBytes } from '../byteFiles'
import { CallError } from '../callError'
import { readText } from '../files'
import { jobText, openJob, packJob } from '../jobFiles'
import { pageWidth, print, wrapped } from '../print'

/** `yardhark merge FILE FILE... --out FILE`: copies of a job, and opinions of it, as one. */
export async function mergeCommand({ rest, options }: Args): Promise<void> {
  const [first, ...others] = rest
  if (first === undefined || others.length === 0) {
    throw new CallError('merge takes a job file and what is to join it; yardhark merge --help')
  }
  const path = options.get('out')
  if (path === undefined) throw new CallError('merge needs the file to write; add --out merged.zip')
  const bytes = new TemporaryBytes()
  try {
    const opened = await openJob(first, bytes)
    const problems = [...opened.problems]
    let { job } = opened
    const told: string[] = []
    for (const other of others) {
      const merged = await joined(other)
      job = merged.job
      const { newOpinions, newClips, newApart } = merged
      const counts = { file: other, opinions: newOpinions, clips: newClips, differences: newApart }
      told.push(sentence(newOpinions + newClips + newApart === 0 ? 'merged_nothing_new' : 'merged_file', counts))
    }
    const packed = await packJob(job, SHARE_ALL, (sha256) => bytes.load(sha256), { path, force: options.has('force') })
    const size = sentence('file_written', { file: path, size_mb: packed.bytes / 1e6 })
    const width = pageWidth()
    await print([...told, size].map((line) => wrapped(line, width, 0)).join('') + jobText(job, problems, width))

    async function joined(other: string) {
      if (!/\.zip$/i.test(other))
        return withOpinions(job, readOpinionFile(readText(other, 'line'), other).opinions, other)
      const copy = await openJob(other, bytes)
      problems.push(...copy.problems)
      return mergeJobs(job, copy.job, other)
    }
  } finally {
    bytes.close()
  }
}
