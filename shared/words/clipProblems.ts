import type { Wording } from './wording'

/** What can be wrong with the sound of a clip, or odd about its file. */
export const CLIP_PROBLEMS = {
  truncated: {
    text: 'The file breaks off: {found_s} of {expected_s} are there.',
    mend: 'Copy it again from the recorder; what is there was used.',
  },
  header_not_patched: {
    text: 'The recorder stopped before it had noted how long the clip is; all of it was read.',
    mend: 'Listen to its end, and let the recorder finish next time.',
  },
  header_lies: {
    text: 'The header of the file is wrong about its {chunk} part; what is there was read.',
    mend: 'Listen to the clip once to be sure that it is whole.',
  },
  not_finite: {
    text: '{count} samples in the file are no numbers; they were read as silence.',
    mend: 'Save the clip again as 16 or 24-bit PCM WAV.',
  },
  too_short: {
    text: 'The clip is only {duration_s} long.',
    mend: 'Record 6 to 10 seconds at each point.',
  },
  silent: {
    text: '{share_percent} of the clip is dead silence, as from a muted or unplugged microphone.',
    mend: 'Check plug, switch and gain, turn noise suppression off, and record it again.',
  },
  faint: {
    text: 'The clip is so quiet, {level_dbfs}, that the steps of the recorder are heard in it.',
    mend: 'Turn the gain up, or record with 24 bits.',
  },
  clipped: {
    text: 'The recording was overloaded: {share_percent} of it is cut flat.',
    mend: 'Turn the gain down and record it again.',
  },
  dc_offset: {
    text: 'The sound does not lie round zero but {offset_percent} of full scale off.',
    mend: 'It does no harm here, but it is a fault of the recorder or its plug.',
  },
  mains_hum: {
    text: 'A hum of {hz} and its multiples is in the clip: mains power.',
    mend: 'Keep the cable away from power, and run the recorder from its battery.',
  },
  knocked: {
    text: 'Knocks or footsteps are in the clip ({count}, in {share_percent} of its time).',
    mend: 'Set the microphone down, let go of it and its cable, stand still, and record it again.',
  },
  windy: {
    text: 'Rumble that comes and goes drowns the rest: wind on the microphone, or traffic.',
    mend: 'Shield the microphone from the wind, press it on firmly, and wait for a lull.',
  },
  voice: {
    text: 'Somebody seems to be speaking in {share_percent} of the clip.',
    mend: 'Record it again in silence.',
  },
  gain_riding: {
    text: 'The recorder turned its gain down {count} times after loud moments, by about {dip_db}.',
    mend: 'Turn automatic gain off; levels cannot be compared while it is on.',
  },
  band_limited: {
    text: 'Everything above {hz} is missing, as after a phone call or a speech codec.',
    mend: 'Record with the microphone itself, as WAV with 16 kHz or more.',
  },
  lossy: {
    text: 'The clip is not WAV and may have lost something when it was packed.',
    mend: 'Record as WAV where you can.',
  },
} as const satisfies Record<string, Wording>
