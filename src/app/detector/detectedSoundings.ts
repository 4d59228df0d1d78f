import type { HeardClip } from '../../../shared/evidence/heardClip'
import type { JobLine } from '../../../shared/job/job'
import { detected } from '../../../shared/learn/detected'
import type { DetectorModel } from '../../../shared/learn/model'
import { stretchAt } from '../../../shared/line/stretchAt'
import type { Sounding } from '../../../shared/locate/answer'
import { soundingsOf } from '../store/selectors/soundingsOf'

/** What the detector looks at, by digest; `null` for a clip that is spoilt or gone. */
export type MeasuredValues = ReadonlyMap<string, readonly (number | null)[] | null>

/** Digests of the clips that a detector is asked about: those with the air on. */
export function askedDigests({ sweeps }: JobLine): string[] {
  return [
    ...new Set(
      sweeps.flatMap(({ clips }) => clips.flatMap(({ row, sound }) => (row.air === 'on' && sound ? sound.sha256 : []))),
    ),
  ]
}

/** Every clip of a line, those with the air on with what the detector says of them. */
export function detectedSoundings(
  line: JobLine,
  heard: Readonly<Record<string, HeardClip>>,
  { model, values }: { readonly model: DetectorModel; readonly values: MeasuredValues },
): Sounding[] {
  const clips = line.sweeps.flatMap((sweep) => sweep.clips)
  return soundingsOf(line, heard).map((sounding, i) => {
    const { row, sound, recording } = clips[i]!
    const measured = sound === null || row.air === 'off' ? null : (values.get(sound.sha256) ?? null)
    if (measured === null) return sounding
    const told = { device: recording?.device ?? '', cover: stretchAt(line.line, row.alongM)?.cover ?? '' }
    return { ...sounding, detected: detected(model, measured, told) }
  })
}
