import type { BroadcastNotes } from '../audio/broadcastChunks'
import type { ClipMark } from '../audio/broadcastClip'
import type { Ring } from '../bubbles/ring'
import type { JobClip } from '../job/job'
import { utcTimes } from './utcTimes'

/** What the Broadcast Wave of a clip tells: where it was taken and when, in UTC; nothing of the customer. */
export function clipNotes({ row, sound }: JobClip): BroadcastNotes {
  const when = row.timeS === null ? null : utcTimes(row.timeS)
  return {
    description: `point ${row.point}, ${row.alongM} m along, air ${row.air}, take ${row.take}`,
    originator: 'Yardhark',
    originatorReference: (sound?.sha256 ?? '').slice(0, 32),
    ...(when ?? { date: '0000-00-00', time: '00:00:00' }), // the standard knows no "not told"
  }
}

/** Rings as marks at their onsets, with the pitch. */
export function ringMarks(rings: readonly Ring[]): ClipMark[] {
  return rings.map(({ timeS, pitchHz }) => ({ timeS, label: `ring ${10 * Math.round(pitchHz / 10)} Hz` }))
}
