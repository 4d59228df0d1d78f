/**
 * Where the work can hurt someone: keys of shared/words by the step they belong to. Shown there until they are hidden for
 * the job, and always in the report, which takes them from here and from nowhere else. Air: [PlasticPipeAir1980]; depth of
 * trenches: [CFR1926]; hearing: [NIOSH98126]; the others are common practice, no source.
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
  sound: ['caution_air_sound', 'caution_air_filled', 'caution_air_isolate', 'caution_ears', 'caution_headphones'],
  dig: [
    'caution_marks',
    'caution_trench',
    'caution_water_in_hole',
    'caution_concrete',
    'caution_relieve',
    'caution_headphones',
    'caution_code_first',
  ],
  mend: ['caution_relieve', 'caution_adhesive', 'caution_drinking', 'caution_code_first'],
} as const

export type CautionStep = keyof typeof CAUTIONS
