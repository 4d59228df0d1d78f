import { shown } from '../../../shared/base/shown'
import type { Job } from '../../../shared/job/job'
import type { ShareChoice } from '../../../shared/jobfile/sharedJob'
import { sentence } from '../../../shared/words/sentence'
import { type Args, lengthOption } from '../args'
import { TemporaryBytes } from '../byteFiles'
import { CallError } from '../callError'
import { jobText, openJob, packJob } from '../jobFiles'
import { jobOfFolder } from '../jobOfFolder'
import { pageWidth, print } from '../print'
import { readSweepFolder } from '../readSweepFolder'

const SPACING = { low: 0.01, high: 1000 }
const START = { low: -10_000, high: 10_000 }

/** `yardhark pack FOLDER --out FILE`: a sweep folder, or part of a job file, as a job file. */
export async function packCommand(args: Args): Promise<void> {
  const [from, ...more] = args.rest
  if (from === undefined || more.length > 0)
    throw new CallError('pack takes one folder or job file; yardhark pack --help')
  const path = args.options.get('out')
  if (path === undefined) throw new CallError('pack needs the file to write; add --out job.zip')
  const choice = {
    points: pointsOption(args),
    withoutCustomer: args.options.has('without-customer'),
    asFlac: args.options.has('flac'),
  }
  const bytes = new TemporaryBytes()
  try {
    const { job, load } = await jobOf(from, args, bytes)
    refuseNoPoint(job, choice)
    const target = { path, force: args.options.has('force') }
    const packed = await packJob(job, choice, load, target)
    const size = sentence('file_written', { file: path, size_mb: packed.bytes / 1e6 })
    await print(`${size}\n${jobText(job, packed.problems, pageWidth())}`)
  } finally {
    bytes.close()
  }
}

async function jobOf(from: string, args: Args, bytes: TemporaryBytes) {
  if (/\.zip$/i.test(from)) {
    const { job } = await openJob(from, bytes)
    return { job, load: (sha256: string) => bytes.load(sha256) }
  }
  const layout = { spacingM: lengthOption(args, 'spacing', SPACING), startM: lengthOption(args, 'start', START) }
  return jobOfFolder(from, readSweepFolder(from, layout), args.options.get('name') ?? null)
}

function pointsOption({ options }: Args): ReadonlySet<number> | null {
  const told = options.get('points')
  if (told === undefined) return null
  if (!/^-?\d{1,6}(?:,-?\d{1,6})*$/.test(told)) {
    throw new CallError(`--points is ${shown(told)}; write numbers with commas between, like 5,6,7`)
  }
  return new Set(told.split(',').map(Number))
}

function refuseNoPoint(job: Job, { points }: ShareChoice): void {
  const clips = job.lines.flatMap((line) => line.sweeps.flatMap((sweep) => sweep.clips))
  if (points === null || clips.some(({ row }) => points.has(row.point))) return
  throw new CallError('--points names no point that has a clip; leave it out, or name others')
}
