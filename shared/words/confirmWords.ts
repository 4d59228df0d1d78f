import type { Wording } from './wording'

/** Confirming by ear, and what to mind before digging. */
export const CONFIRM_WORDS = {
  heading_confirm: { text: 'Heard by a person' },
  confirm_why: { text: 'A program has chosen this place. Before anybody digs there, somebody looks and listens.' },
  confirm_look: { text: 'Look at the spectrum of point {point}.' },
  confirm_play: { text: 'Play a clip of point {point}.' },
  confirm_play_flanks: { text: 'Play a clip beside it, of point {first} or {second}.' },
  confirm_play_flank: { text: 'Play a clip beside it, of point {first}.' },
  confirm_missing: { text: 'You can answer once these are done.' },
  label_done: { text: 'done' },
  label_to_do: { text: 'to do' },
  confirm_question: { text: 'Do you hear it at point {point}, and less beside it?' },
  label_says_yes: { text: 'Yes' },
  label_says_no: { text: 'No' },
  label_says_unsure: { text: 'Not sure' },
  label_note: { text: 'Note' },
  label_noted: { text: 'Note: {note}' },
  do_open_point: { text: 'Open point {point}' },
  do_show_point: { text: 'Go back to point {point}' },
  do_keep_said: { text: 'Save what I heard' },
  do_say_again: { text: 'Answer again' },
  heading_before_digging: { text: 'Before digging' },
  caution_trench: {
    text: 'From 1.5 m (5 ft) deep a trench needs protection. Soaked ground caves in sooner: support it earlier, and look for hollows under slabs.',
  },
  caution_water_in_hole: {
    text: 'Water in the hole: pump, lights and heater isolated, and proved dead by somebody licensed. Near a pool, leave bonding conductors whole.',
  },
  caution_concrete: {
    text: 'Before cutting concrete find out about bars, cables and stressed tendons in it, and keep out of the dust.',
  },
  caution_headphones: { text: 'Headphones off when others dig, saw or drive near.' },
} as const satisfies Record<string, Wording>
