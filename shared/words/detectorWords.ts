import type { Wording } from './wording'

/** What training and scoring say on the command line. */
export const DETECTOR_WORDS = {
  detector_trained_on: {
    text: '{name} learnt from {clips} clips, {leaks} of a leak and {others} of none, of {jobs} jobs.',
  },
  detector_left_out: { text: 'Left out: {why}.' },
  heading_detector_apart_job: { text: 'On jobs that were kept back' },
  heading_detector_apart_device: { text: 'On devices that were kept back' },
  heading_detector_new_clips: { text: 'On clips it has not learnt from' },
  detector_area: {
    text: 'Of a clip of a leak and one of none, the leak scores higher in {area_share} of the pairs ({low_share} to {high_share}).',
  },
  detector_brier: { text: 'Brier score {brier}: 0 is perfect, 0.25 is what tossing a coin gets.' },
  detector_threshold: {
    text: 'From a probability of {threshold_probability} on it says leak: {hits} leaks found, {misses} missed, {false_alarms} false alarms in {others} others.',
  },
  detector_no_area: { text: 'Clips of one kind only: what it is worth cannot be told.' },
  detector_heard_left_out: { text: '{clips} clips were left out, because it has learnt from them.' },
  heading_detector_calibration: { text: 'What it said and what came of it' },
  label_detector_far: { text: 'unlike what it has heard' },
  label_detector_new_device: { text: 'never heard this device' },
  label_detector_new_cover: { text: 'never heard this cover' },
  detector_limit_synthetic: {
    text: 'A detector knows only what it was trained on. It gives a number beside the evidence; the air-off clip and the ear decide.',
  },
  detector_limit_water: {
    text: 'Running water bubbles as well: it cannot tell a leak from water that runs for another reason.',
  },
  detector_card_trained: { text: 'Trained {when} with version {version}.' },
  heading_detector_data: { text: 'Data' },
  heading_detector_worth: { text: 'What it is worth' },
  heading_detector_limits: { text: 'Limits' },
  detector_no_about: { text: 'Nobody said where the clips come from.' },
} as const satisfies Record<string, Wording>
