import { printable } from '../../shared/base/shown'
import type { DetectorModel } from '../../shared/learn/model'
import { readModel } from '../../shared/learn/readModel'
import { CallError } from './callError'
import { readText } from './files'

/** The model that a call names. @throws {CallError} none named. @throws {FormatError} not a model. */
export function readModelFile(path: string | undefined, command: string): DetectorModel {
  if (path === undefined) throw new CallError(`${command} needs a model first; yardhark ${command} --help`)
  return readModel(readText(path, 'model'), printable(path))
}
