import { webcrypto } from 'node:crypto'
import type { Job } from '../../../shared/job/job'
import { deviceName, signatureOf } from '../../../shared/opinion/signedOpinion'
import { sentence } from '../../../shared/words/sentence'
import type { Args } from '../args'
import { CallError } from '../callError'
import { jobText, openJob } from '../jobFiles'
import { pageWidth, print, wrapped } from '../print'

const CURVE = { name: 'ECDSA', namedCurve: 'P-256' }
const NOT_WHOLE = 2

/** `yardhark verify FILE`: whether a job file is whole, and who signed the opinions in it. */
export async function verifyCommand({ rest }: Args): Promise<void> {
  const [path, ...more] = rest
  if (path === undefined || more.length > 0) throw new CallError('verify takes one job file; yardhark verify --help')
  const { job, problems, points, withoutCustomer } = await openJob(path, null)
  const width = pageWidth()
  const notes = [
    ...(points === null ? [] : [sentence('file_some_points', { points: points.join(', ') })]),
    ...(withoutCustomer ? [sentence('file_without_customer', {})] : []),
    ...(await opinionLines(job)),
    sentence(problems.length === 0 ? 'file_whole' : 'file_not_whole', {}),
  ]
  await print(jobText(job, problems, width) + notes.map((line) => wrapped(line, width, 0)).join(''))
  if (problems.length > 0) process.exitCode = NOT_WHOLE
}

async function opinionLines(job: Job): Promise<string[]> {
  const lines: string[] = []
  for (const opinion of job.opinions ?? []) {
    const signed = await signatureOf(opinion, verifySignature)
    const who = { reviewer: opinion.reviewer === '' ? opinion.id : opinion.reviewer }
    if (signed === 'unsigned') lines.push(sentence('opinion_unsigned', who))
    else {
      const device = deviceName(opinion.deviceKey ?? '?')
      lines.push(sentence(signed === 'unchanged' ? 'opinion_unchanged' : 'opinion_changed', { ...who, device }))
    }
  }
  return lines
}

async function verifySignature(key: Uint8Array, message: Uint8Array, signature: Uint8Array): Promise<boolean> {
  try {
    const imported = await webcrypto.subtle.importKey('raw', key, CURVE, false, ['verify'])
    return await webcrypto.subtle.verify({ name: 'ECDSA', hash: 'SHA-256' }, imported, signature, message)
  } catch {
    return false // no point of the curve
  }
}
