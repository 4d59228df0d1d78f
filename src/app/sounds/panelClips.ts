import type { ClipEvidence } from '../../../shared/evidence/evidence'
import type { HeardClip } from '../../../shared/evidence/heardClip'
import type { JobLine } from '../../../shared/job/job'
import { isUsable } from '../../../shared/locate/settingsDown'

/** A clip as the panel of a point shows and plays it. */
export interface PanelClip {
  readonly id: string
  readonly point: number
  readonly alongM: number
  readonly air: 'on' | 'off'
  readonly sweep: string
  readonly take: number
  readonly file: string
  readonly sha256: string | null
  /** `null` while it was not listened to, or cannot be. */
  readonly evidence: ClipEvidence | null
  readonly usable: boolean
}

/** The clips of a point, and of those beside it. */
export interface PanelClips {
  /** Of the point itself: air on first, usable first. */
  readonly own: readonly PanelClip[]
  /** With the air on, at the nearest place before and after along the line; `null` where there is none. */
  readonly before: PanelClip | null
  readonly after: PanelClip | null
  /** Evidence of all usable clips of the line with the air on. */
  readonly allOn: readonly ClipEvidence[]
}

/** The clips whose spectra are drawn over each other, and that can be heard against each other. */
export interface ShownClips {
  readonly on: PanelClip | null
  readonly off: PanelClip | null
  readonly before: PanelClip | null
  readonly after: PanelClip | null
}

/** Gathers what the panel of a point needs. */
export function panelClips(line: JobLine, heard: Readonly<Record<string, HeardClip>>, point: number): PanelClips {
  const clips = clipsOf(line, heard)
  const own = clips.filter((clip) => clip.point === point).sort(bestFirst)
  const on = clips.filter(({ air, point: other }) => air === 'on' && other !== point).sort(bestFirst)
  const alongM = own[0]?.alongM ?? 0
  return {
    own,
    before: nearest(
      on.filter((clip) => clip.alongM < alongM),
      alongM,
    ),
    after: nearest(
      on.filter((clip) => clip.alongM > alongM),
      alongM,
    ),
    allOn: clips.flatMap(({ air, usable, evidence }) =>
      air === 'on' && usable && evidence !== null ? [evidence] : [],
    ),
  }
}

function clipsOf(line: JobLine, heard: Readonly<Record<string, HeardClip>>): PanelClip[] {
  return line.sweeps.flatMap(({ id, clips }) =>
    clips.map(({ row, sound, problems }, i) => {
      const said = sound === null ? undefined : heard[sound.sha256]
      const evidence = said?.evidence ?? null
      const { point, alongM, air, sweep, take, file } = row
      const usable = isUsable({ row, evidence, problems: [...problems, ...(said?.problems ?? [])] })
      return {
        id: `${id}/${i}`,
        point,
        alongM,
        air,
        sweep,
        take,
        file,
        sha256: sound?.sha256 ?? null,
        evidence,
        usable,
      }
    }),
  )
}

function bestFirst(a: PanelClip, b: PanelClip): number {
  return Number(a.air === 'off') - Number(b.air === 'off') || Number(b.usable) - Number(a.usable) || a.take - b.take
}

/** The nearest place first, there the best clip: the list is sorted by that already. */
function nearest(clips: readonly PanelClip[], alongM: number): PanelClip | null {
  const away = (clip: PanelClip) => Math.abs(clip.alongM - alongM) + (clip.usable ? 0 : 1e-6)
  return clips.reduce<PanelClip | null>((best, each) => (best === null || away(each) < away(best) ? each : best), null)
}
