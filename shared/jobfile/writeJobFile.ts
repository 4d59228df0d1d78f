import type { JobFilePlan } from './planJobFile'
import { centralDirectory, localHeader } from './zipWriting'

/**
 * The bytes of a planned job file, piece after piece; one file of it is held at a time.
 *
 * @param onDone Called after each file.
 */
export async function* writeJobFile(
  plan: JobFilePlan,
  onDone: (done: number, total: number) => void,
): AsyncGenerator<Uint8Array> {
  for (const [done, { zipped, bytes }] of plan.files.entries()) {
    yield localHeader(zipped)
    yield await bytes()
    onDone(done + 1, plan.files.length)
  }
  yield centralDirectory(plan.files.map(({ zipped }) => zipped))
}
