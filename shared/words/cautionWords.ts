import type { Wording } from './wording'

/** Where the work can hurt someone; each defers to the local code, licensed practice and the makers. */
export const CAUTION_WORDS = {
  heading_cautions: { text: 'Before you begin' },
  do_hide_cautions: { text: 'Read: hide them in this job' },
  do_show_cautions: { text: 'Show the cautions' },
  caution_water_not_air: {
    text: 'Test with water, never with air. Air in a plastic line is stored energy: it bursts where water only weeps.',
  },
  caution_relieve: {
    text: 'Relieve to zero, and see it on the gauge, before you loosen, cut or enter anything.',
  },
  caution_pump: {
    text: 'Pump locked out. Nobody in the basin while any suction is plugged or under test.',
  },
  caution_plugs: { text: "Inflatable plugs only to their maker's limit, and tied. Stand clear of them." },
  caution_drinking: {
    text: "Drinking-water lines only with the supplier's leave. Flush and disinfect as the local code says.",
  },
  caution_code_first: { text: "The local code, licensed practice and the makers' instructions come first." },
  caution_air_sound: {
    text: 'Air only for the sound: a regulator set before it is connected, a relief valve, no more than bubbles need, never above the pressure of the water test.',
  },
  caution_air_filled: { text: 'Let air in only after the line was filled with water.' },
  caution_air_isolate: {
    text: 'Shut off filter, heater and chlorinator before any air: air caught in a filter tank can throw its lid.',
  },
  caution_ears: {
    text: 'Headphones low: ears stand 85 dBA for 8 hours a day, and every 3 dB more halve that.',
  },
  caution_adhesive: { text: "Adhesives: gloves, fresh air, and the maker's sheet." },
} as const satisfies Record<string, Wording>
