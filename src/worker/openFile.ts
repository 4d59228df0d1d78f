import { holdsBag } from '../../shared/jobfile/holdsBag'
import { openJobFile } from '../../shared/jobfile/openJobFile'
import { blobSource } from './blobSource'
import { digestOf } from './digestOf'
import type { Calls } from './protocol'

type Open = Calls['openJobFile']

/**
 * Opens a job file that nobody vouches for.
 *
 * @param hand Gets each sound and photo, and how far it is.
 * @returns `null` for a zip that holds no bag.
 * @throws {FormatError} no zip; a bag that is no job file.
 */
export async function openFile(file: Blob, name: string, hand: (part: Open['part']) => void): Promise<Open['out']> {
  const source = blobSource(file)
  if (!(await holdsBag(source, name))) return null
  return openJobFile(source, name, {
    digest: digestOf,
    keep: async ({ sha256, bytes }) => hand({ sha256, bytes: new Blob([bytes as Uint8Array<ArrayBuffer>]) }),
    onDone: (done, total) => hand({ done, total }),
  })
}
