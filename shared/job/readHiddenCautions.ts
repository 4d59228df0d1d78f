import { FormatError } from '../base/errors'
import { type JsonObject, optionalList, placeOf } from '../base/jsonFields'
import { shown } from '../base/shown'
import { CAUTIONS, type CautionStep } from './cautions'

const STEPS = Object.keys(CAUTIONS) as CautionStep[]

/**
 * Steps whose cautions were hidden in a job, under `hidden_cautions`.
 *
 * @returns Empty when the key is missing.
 * @throws {FormatError} anything that is no list of known steps.
 */
export function readHiddenCautions(job: JsonObject): CautionStep[] {
  return optionalList(job, 'hidden_cautions', STEPS.length).map((entry, i) => {
    const step = STEPS.find((each) => each === entry)
    if (step !== undefined) return step
    const place = `${placeOf(job, 'hidden_cautions')}[${i}]`
    throw new FormatError(job.file, place, `is ${shown(entry)}; one of ${STEPS.join(', ')} is expected`)
  })
}
