import type { Mend } from './mend'

/** A mend in the form of the job's file; `readMend` gives the same again. */
export function mendJson({ cutAtM, parts, steps, joint, closedS }: Mend): Record<string, unknown> {
  return {
    cut_at_m: cutAtM,
    parts: parts.map(({ id, name, fromM, toM, testIds }) => ({
      id,
      name,
      from_m: fromM,
      to_m: toM,
      test_ids: testIds,
    })),
    steps,
    joint: {
      adhesive: joint.adhesive,
      work_min: joint.times?.workMin ?? null,
      pressure_min: joint.times?.pressureMin ?? null,
      temperature_c: joint.temperatureC,
      start_s: joint.startS,
    },
    closed_s: closedS,
  }
}
