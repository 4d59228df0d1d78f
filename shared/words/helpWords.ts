import type { Wording } from './wording'

/** The words of the trade as they are used here. */
export const HELP_WORDS = {
  heading_help_record: { text: 'How to record a sweep' },
  help_record_points: { text: 'Mark points over the line, a metre or less apart, and number them along it.' },
  help_record_water: { text: 'Shut off filter, heater and chlorinator, and fill the line with water.' },
  help_record_air: {
    text: 'Let air in gently: through a regulator set before, with a relief valve, no more than it takes to bubble, and never above the pressure of the water test.',
  },
  help_record_clip: {
    text: 'Set the ground microphone down at each point, let go of it, stand still, and record 6 to 10 seconds.',
  },
  help_record_off: { text: 'Without lifting it, record once more with the air off. That tells the noise floor there.' },
  help_record_phone: {
    text: 'On this phone the screen Listen does the rest: it goes from point to point, counts the seconds, and says when a clip is to be made again.',
  },
  help_record_free: {
    text: 'With one hand free, switch Hands free on there: a clip begins by itself once the level has settled.',
  },
  help_record_names: {
    text: 'With a recorder of its own, name the clips by their points: 6-on.wav and 6-off.wav. Put them into one folder, and open it on the screen Jobs.',
  },
  help_record_line: {
    text: 'On the screen Line tell legs, depth and cover. Then look at the screen Place, and listen.',
  },
  heading_help_ear: { text: 'How to get a second ear' },
  help_ear_share: {
    text: 'On the screen Second ear pack the job, with or without the customer, and send the file. Its size is said first.',
  },
  help_ear_open: { text: 'Whoever gets it opens it on the screen Jobs, as a zip. It is kept on that device only.' },
  help_ear_blind: {
    text: 'They hear the clips before anything is told: no answer, no ranking, no other opinion. Then they say where, and how sure they are.',
  },
  help_ear_back: {
    text: 'They send the opinions back, a small file. Open it here on the screen Second ear: it joins the job, and nothing is overwritten.',
  },
  heading_help_words: { text: 'Words' },
  heading_help_features: { text: 'What a clip tells' },
  label_help_job: { text: 'Job' },
  help_job: { text: 'One visit to one site: its lines, their sweeps, and what was said of them.' },
  label_help_line: { text: 'Line' },
  help_line: { text: 'The run of pipe under test, from its start (0) to its end.' },
  label_help_along: { text: 'Along' },
  help_along: { text: "Distance from the line's start, measured along the pipe; below 0 is before the start." },
  label_help_leg: { text: 'Leg' },
  help_leg: { text: 'A straight piece of the line, from one corner to the next.' },
  label_help_stretch: { text: 'Stretch' },
  help_stretch: { text: 'A part of the line with one cover (grass, soil, gravel, pavers or slab) and one depth.' },
  label_help_inlet: { text: 'Air inlet' },
  help_inlet: { text: 'Where air is let into the line. It hisses too, and can lie past an end of the line.' },
  label_help_point: { text: 'Point' },
  help_point: { text: 'A numbered place on the ground over the line where the microphone is set down.' },
  label_help_clip: { text: 'Clip' },
  help_clip: { text: 'One recording at one point, with the air on or off.' },
  label_help_take: { text: 'Take' },
  help_take: {
    text: 'One of several recordings at one point. Clips of one take are one setting-down: the microphone was not lifted between them.',
  },
  label_help_sweep: { text: 'Sweep' },
  help_sweep: { text: 'One pass of clips over the points. A line can have several.' },
  label_help_spectrum: { text: 'Spectrum' },
  help_spectrum: { text: 'How loud a clip is at each pitch, low ones on the left.' },
  label_help_spectrogram: { text: 'Spectrogram' },
  help_spectrogram: { text: 'The same from moment to moment: seconds across, high pitches above.' },
  label_help_hertz: { text: 'Hertz (Hz)' },
  help_hertz: {
    text: 'Pitch, in swings a second; 1k is 1000. Twice as many are an octave higher; a band of a third of an octave is named by its middle.',
  },
  label_help_decibel: { text: 'Decibel (dB)' },
  help_decibel: {
    text: 'How much louder: 6 dB more is twice the pressure of the sound. dBFS counts down from the loudest that a recorder can hold.',
  },
  label_help_ring: { text: 'Ring' },
  help_ring: { text: 'One bubble heard: a short tone that dies away.' },
  label_help_floor: { text: 'Noise floor' },
  help_floor: { text: 'What is heard there without the leak: the clip with the air off tells it best.' },
  label_help_source: { text: 'Source' },
  help_source: { text: 'A place on the line from which a leak is heard. There can be another one.' },
  label_help_probability: { text: 'Probability' },
  help_probability: { text: 'How often it would be so in many such cases: 80 % is eight times in ten.' },
  label_help_window: { text: 'Window' },
  help_window: { text: 'The stretch of line in which the leak lies with the probability that is told beside it.' },
  label_help_located: { text: 'Located' },
  help_located: { text: 'One place stands out, and its window is narrow enough to dig by.' },
  label_help_unsure: { text: 'Unsure' },
  help_unsure: {
    text: 'The window is wide, or the leak may lie past an end. The best candidate is told, and where to listen next.',
  },
  label_help_none: { text: 'No leak heard' },
  help_none: {
    text: 'The clips are explained as well without a leak. That does not mean that there is none: the pressure test decides.',
  },
  label_help_ear: { text: 'Confirmed by ear' },
  help_ear: { text: 'Somebody looked at the spectrum, listened to the best point and one beside it, and said yes.' },
} as const satisfies Record<string, Wording>
