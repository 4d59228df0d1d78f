import type { DetectorPart, Reason } from './answer'

/** As a multiple of the odds: below two nothing is said for or against. Chosen. */
const TELLING_NEPERS = Math.log(2)

/** What a detector added and how much of its word counted; nothing where none was asked. */
export function detectorReason(detector: DetectorPart | null): Reason[] {
  if (detector === null) return []
  const { supportNepers, clips, meanTrust, newDevices, newCovers } = detector
  const times = Math.exp(Math.min(20, Math.abs(supportNepers)))
  const key =
    supportNepers >= TELLING_NEPERS
      ? 'reason_detector_for'
      : supportNepers <= -TELLING_NEPERS
        ? 'reason_detector_against'
        : 'reason_detector_neither'
  const told = { clips, share: meanTrust }
  return [
    { key, values: key === 'reason_detector_neither' ? told : { ...told, times } },
    ...(newDevices + newCovers === 0
      ? []
      : [{ key: 'reason_detector_unheard', values: { clips, new_devices: newDevices, new_covers: newCovers } }]),
  ]
}
