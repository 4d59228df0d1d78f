import type { Problem } from '../base/problem'
import { lineJson } from '../line/lineJson'
import type { PhoneAccount } from '../sweep/phoneAccount'
import type { Complaint } from './complaint'
import { diggingJson } from './diggingJson'
import { foundJson } from './foundJson'
import { type Confirmation, JOB_SCHEMA_VERSION, type Job, type JobClip, type JobLine, type JobSweep } from './job'
import { keptAnswerJson } from './keptAnswerJson'
import { mendJson } from './mendJson'
import { opinionJson } from './opinionJson'
import type { PlannedPoint } from './plannedPoints'
import { pressureTestJson } from './pressureTestJson'
import type { Recording } from './recording'
import type { Sign } from './signs'
import type { Site } from './site'

/**
 * A job in the form of its file; `readJob` gives the same job again.
 *
 * @returns Plain data in full precision, keys in snake_case with the unit at the end.
 */
export function jobJson(job: Job): Record<string, unknown> {
  return {
    schema_version: JOB_SCHEMA_VERSION,
    id: job.id,
    name: job.name,
    created_s: job.createdS,
    changed_s: job.changedS,
    lines: job.lines.map(lineFields),
    ...(job.hiddenCautions && { hidden_cautions: job.hiddenCautions }),
    ...(job.opinions && { opinions: job.opinions.map(opinionJson) }),
    ...(job.keptApart && { kept_apart: job.keptApart.map(({ place, value }) => ({ place, value })) }),
  }
}

function lineFields({ id, name, line, problems, sweeps, confirmations, ...later }: JobLine): Record<string, unknown> {
  return {
    id,
    name,
    line: lineJson(line),
    problems: problems.map(problemFields),
    sweeps: sweeps.map(sweepFields),
    confirmations: confirmations.map(confirmationFields),
    ...(later.plannedPoints && { planned_points: later.plannedPoints.map(plannedPointFields) }),
    ...(later.signs && { signs: later.signs.map(signFields) }),
    ...(later.removedClips && {
      removed_clips: later.removedClips.map((clip) => ({ sweep: clip.row.sweep, ...clipFields(clip) })),
    }),
    ...(later.site && { site: siteFields(later.site) }),
    ...(later.complaint && { complaint: complaintFields(later.complaint) }),
    ...(later.pressureTests && { pressure_tests: later.pressureTests.map(pressureTestJson) }),
    ...(later.found && { found: later.found.map(foundJson) }),
    ...(later.mend && { mend: mendJson(later.mend) }),
    ...(later.keptAnswer && { kept_answer: keptAnswerJson(later.keptAnswer) }),
    ...(later.digging && { digging: diggingJson(later.digging) }),
  }
}

function plannedPointFields({ point, alongM, offsetM }: PlannedPoint): Record<string, unknown> {
  return { point, along_m: alongM, offset_m: offsetM }
}

function signFields({ id, kind, alongM, offsetM, note }: Sign): Record<string, unknown> {
  return { id, kind, along_m: alongM, offset_m: offsetM, note }
}

function siteFields({ startName, endName, routeWay, startAt, snapDeg, photo }: Site): Record<string, unknown> {
  return {
    start_name: startName,
    end_name: endName,
    route: routeWay,
    start_at: startAt && [startAt.xM, startAt.yM],
    snap_deg: snapDeg,
    photo: photo && {
      sha256: photo.sha256,
      bytes: photo.bytes,
      width_px: photo.widthPx,
      height_px: photo.heightPx,
      m_per_px: photo.mPerPx,
      scale_told: photo.scaleTold,
      centre: [photo.centre.xM, photo.centre.yM],
      ...(photo.turnDeg !== undefined && { turn_deg: photo.turnDeg }),
    },
  }
}

function complaintFields({ said, ruledOut, isolation, waterPasses }: Complaint): Record<string, unknown> {
  return { said, ruled_out: ruledOut, isolation, water_passes: waterPasses }
}

function sweepFields({ id, name, clips, problems }: JobSweep): Record<string, unknown> {
  return { id, name, clips: clips.map(clipFields), problems: problems.map(problemFields) }
}

function clipFields({ row, sound, problems, recording }: JobClip): Record<string, unknown> {
  return {
    point: row.point,
    along_m: row.alongM,
    file: row.file,
    air: row.air,
    take: row.take,
    shared_take: row.sharedTake,
    offset_m: row.offsetM,
    time_s: row.timeS,
    contact: row.contact,
    air_kpa: row.airKpa,
    note: row.note,
    ...(row.phone && { phone: phoneFields(row.phone) }),
    columns: row.unknown,
    sha256: sound?.sha256 ?? null,
    bytes: sound?.bytes ?? null,
    problems: problems.map(problemFields),
    ...(recording && { recording: recordingFields(recording) }),
  }
}

function phoneFields({ processing, deviceHz, endedBy }: PhoneAccount): Record<string, unknown> {
  return { processing, device_hz: deviceHz, ended_by: endedBy }
}

function recordingFields(recording: Recording): Record<string, unknown> {
  const { settings } = recording
  return {
    device: recording.device,
    sample_rate_hz: recording.sampleRateHz,
    channels: recording.channelCount,
    kept_bits: recording.keptBits,
    settings: {
      echo_cancellation: settings.echoCancellation,
      noise_suppression: settings.noiseSuppression,
      auto_gain_control: settings.autoGainControl,
      sample_rate_hz: settings.sampleRateHz,
      sample_size_bits: settings.sampleSizeBits,
      channels: settings.channelCount,
    },
    wanted_s: recording.wantedS,
    ended_by: recording.endedBy,
  }
}

function confirmationFields(said: Confirmation): Record<string, unknown> {
  return {
    id: said.id,
    time_s: said.timeS,
    says: said.says,
    note: said.note,
    verdict: said.verdict,
    along_m: said.alongM,
    window_m: said.windowM,
  }
}

function problemFields({ key, severity, values }: Problem): Record<string, unknown> {
  return { key, severity, values }
}
