import type { Reason } from './answer'
import type { Facts } from './facts'
import { OWN, OWN_AT } from './normalEquations'
import { isUsable } from './settingsDown'

/** A setting-down that read this much off the rest is named, dB. Chosen: twice what is usual. */
const ODD_GAIN_DB = 5
/** Further than this many spacings from the place it matters little. Chosen. */
const MATTERS_SPACINGS = 1.5

/** What was set aside or weighed down near the place: clips that could not be used, and microphones set down oddly. */
export function trustReasons(facts: Facts): Reason[] {
  return [...setAside(facts), ...oddlySetDown(facts)]
}

function setAside({ soundings, candidate, spacingM }: Facts): Reason[] {
  const near = soundings.filter(
    (sounding) =>
      !isUsable(sounding) && Math.abs(sounding.row.alongM - candidate.alongM) <= MATTERS_SPACINGS * spacingM,
  )
  const [first] = [...near].sort((a, b) => (a.row.file < b.row.file ? -1 : 1))
  if (!first) return []
  const values = { file: first.row.file, point: first.row.point, clips: near.length }
  return [{ key: near.length === 1 ? 'reason_clip_set_aside' : 'reason_clips_set_aside', values }]
}

/** The setting-down near the place whose own gain had to be taken furthest from none. */
function oddlySetDown({ model, scan, candidate, spacingM }: Facts): Reason[] {
  const { fit } = scan.tried.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a))
  const odd = model.settings
    .map(({ point, alongM, on }, k) => ({ point, alongM, on, gainDb: fit.own[k * OWN + OWN_AT.gain]! }))
    .filter(
      ({ alongM, on, gainDb }) =>
        on !== null &&
        Math.abs(gainDb) >= ODD_GAIN_DB &&
        Math.abs(alongM - candidate.alongM) <= MATTERS_SPACINGS * spacingM,
    )
    .sort((a, b) => Math.abs(b.gainDb) - Math.abs(a.gainDb) || a.point - b.point)[0]
  if (!odd) return []
  const key = odd.gainDb > 0 ? 'reason_coupled_louder' : 'reason_coupled_fainter'
  return [{ key, values: { point: odd.point, gain_db: Math.abs(odd.gainDb) } }]
}
