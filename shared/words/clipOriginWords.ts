import type { Wording } from './wording'

/** How clips came to be, and recordings that were left when the page last ended. */
export const CLIP_ORIGIN_WORDS = {
  ended_full: {
    text: 'The device had no room left in the middle of the clip; what came until then is kept.',
    mend: 'Make room and record it again.',
  },
  ended_hidden: {
    text: 'The page was left in the middle of the clip; what came until then is kept.',
    mend: 'Keep the page in front while it records, and record it again.',
  },
  ended_killed: {
    text: 'The app was ended in the middle of the clip; what came until then is kept.',
    mend: 'Record it again if it is too short.',
  },
  ended_stopped: { text: 'The clip was ended by hand.', mend: 'Record it again if it is too short.' },
  ended_unplugged: {
    text: 'The microphone was unplugged in the middle; what it gave until then is kept.',
    mend: 'Plug it in and record it again.',
  },
  phone_echo_on: {
    text: 'The phone did not turn echo cancellation off, which takes away what it holds for echo.',
    mend: 'Choose another microphone or browser; a USB interface often obeys.',
  },
  phone_gain_on: {
    text: 'The phone did not turn automatic gain off: levels cannot be compared while it is on.',
    mend: 'Choose another microphone or browser; a USB interface often obeys.',
  },
  phone_headset_rate: {
    text: 'The sound comes at {rate_hz}, as from a headset without a wire.',
    mend: 'Switch Bluetooth off and plug the ground microphone in.',
  },
  phone_noise_on: {
    text: 'The phone did not turn noise suppression off: it may take the bubbling for noise.',
    mend: 'Choose another microphone or browser; a USB interface often obeys.',
  },
  do_drop_left: { text: 'Throw it away' },
  do_keep_left: { text: 'Keep it as a clip' },
  label_off: { text: 'off' },
  label_on: { text: 'on' },
  left_found: {
    text: 'A clip was cut off when the app ended: point {point}, air {air}, about {length_s}, of {name}.',
  },
  left_no_job: { text: 'A clip was cut off when the app ended, about {length_s}. Its job is no longer there.' },
  label_air_off: { text: 'Air off' },
  label_air_on: { text: 'Air on' },
  label_take_number: { text: 'Take {take}' },
  label_sweep_go_on: { text: 'Sweep {name}' },
  left_full: {
    text: 'This device has no room left to make a clip of it. It stays as it is.',
    mend: 'Delete a job you no longer need for good, or make room on the device, and try again.',
  },
  left_kept: { text: 'The clip of point {point} is in the job.' },
  left_not_kept: { text: 'The clip could not be kept: {why}.', mend: 'Make room on the device and try again.' },
  do_add_recorded_clip: { text: 'Record a clip' },
} as const satisfies Record<string, Wording>
