/**
 * Where the work can hurt someone: keys of shared/words by the step they belong to. Shown there until they are hidden for
 * the job, and always in the report, which takes them from here and from nowhere else.
 */
export const CAUTIONS = {
  pressure: [
    'caution_water_not_air',
    'caution_relieve',
    'caution_pump',
    'caution_plugs',
    'caution_drinking',
    'caution_code_first',
  ],
} as const

export type CautionStep = keyof typeof CAUTIONS
