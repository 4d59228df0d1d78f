import type { JobClip, KeptSound } from '../job/job'
import type { Recording } from '../job/recording'
import { recordingProblems } from '../job/recordingProblems'
import type { Contact, SweepRow } from '../sweep/sweep'
import type { Slot } from './slot'

export interface RecordedClip {
  readonly slot: Slot
  /** Name of the sweep it joins. */
  readonly sweep: string
  readonly sound: KeptSound
  readonly recording: Recording
  readonly contact: Contact | null
  /** When it began, s since 1970. */
  readonly timeS: number
  /** Paths of the line's clips, kept and taken out. */
  readonly takenFiles: ReadonlySet<string>
}

/** A clip that was recorded here, as it stands in its sweep: a row just as of a sheet. */
export function recordedClip({ slot, sweep, sound, recording, contact, timeS, takenFiles }: RecordedClip): JobClip {
  const row: SweepRow = {
    point: slot.point,
    alongM: slot.alongM,
    file: freeFile(slot, sweep, takenFiles),
    air: slot.air,
    take: slot.take,
    sharedTake: true,
    sweep,
    offsetM: slot.offsetM,
    timeS,
    contact,
    airKpa: null,
    note: '',
    unknown: {},
  }
  return { row, sound, problems: recordingProblems(recording), recording }
}

/**
 * A name as recorders and people give it, that nobody has: `06-on.wav`, `06-off-take2.wav`; in a folder of the sweep's
 * own from the second sweep on.
 */
function freeFile({ point, air, take }: Slot, sweep: string, taken: ReadonlySet<string>): string {
  const number = point < 0 ? String(point) : String(point).padStart(2, '0')
  const name = `${number}-${air}${take === 1 ? '' : `-take${take}`}`
  const folder = sweep.replace(/[^\w-]+/g, '-').replace(/^-+|-+$/g, '')
  const path = sweep === '1' || folder === '' ? name : `sweep-${folder}/${name}`
  for (let copy = 1; ; copy++) {
    const file = copy === 1 ? `${path}.wav` : `${path}-${copy}.wav`
    if (!taken.has(file)) return file
  }
}
