import type { Wording } from './wording'

/** Hooking a ground microphone up to a phone, and the tap test. */
export const HOOK_UP_WORDS = {
  heading_hook_up: { text: 'Hook up the ground microphone' },
  hook_up_why: {
    text: 'A phone that records its own microphone is the commonest mistake, and nothing shows it. Hook up, then do the tap test.',
  },
  do_hook_up: { text: 'Hook up and test' },
  do_hook_up_done: { text: 'On to the points' },
  heading_plug: { text: 'Plug' },
  plug_headset: {
    text: 'Headset socket: the phone needs a plug with three rings, microphone on the sleeve. A microphone with two rings needs an adapter for phones.',
  },
  plug_power: {
    text: 'The socket feeds a small voltage that some microphones live on (plug-in power). One with a battery or amplifier of its own goes in through an adapter that keeps that voltage off.',
  },
  plug_usb: {
    text: 'USB audio interface: plug it in before the page opens the microphone, and choose it by name below. It has a gain knob of its own and mostly leaves the sound alone.',
  },
  plug_adapter: {
    text: 'Phones without a socket need a USB adapter with a sound chip that takes a microphone; many take headphones only.',
  },
  plug_bluetooth: { text: 'Switch Bluetooth off: a headset in the car would be listened to instead.' },
  heading_set_down: { text: 'Set down' },
  set_spike: { text: 'Soil and grass: a spike pushed firmly into the ground, always as deep.' },
  set_plate: {
    text: 'Pavers, slab, concrete: a plate or foot, flat and clean beneath, weighed down; never in the hand.',
  },
  set_same: { text: 'The same way at every point: levels are compared. Let go of it and its cable, and stand still.' },
  hook_up_practice: { text: 'These are common practice of the trade; the maker of your microphone knows more.' },
  heading_tap_test: { text: 'Tap test' },
  tap_intro: {
    text: 'Lay the phone a step away from the ground microphone. The test listens to one, then to the other.',
  },
  do_tap_start: { text: 'Start the tap test' },
  do_tap_again: { text: 'Test again' },
  tap_microphone: { text: 'Tap the ground microphone three times, slowly.' },
  tap_wait: { text: 'Good. In a moment, the phone.' },
  tap_phone: { text: 'Now tap the phone three times, near its lower edge.' },
  label_taps_heard: { text: 'Taps heard: {on_microphone} on the ground microphone, {on_phone} on the phone' },
  label_tap_left: { text: '{seconds} seconds' },
  tap_is_ground: { text: 'The ground microphone is heard.' },
  tap_is_phone: {
    text: 'The phone listens to its own microphone, not to the one in the ground.',
    mend: 'Push the plug in all the way, try an adapter, or choose the microphone by name; then test again.',
  },
  tap_is_nothing: {
    text: 'No tap came through.',
    mend: 'Check plug, battery, switch and gain, and whether the right microphone is chosen; then test again.',
  },
  tap_is_unclear: {
    text: 'It cannot be told which microphone is heard.',
    mend: 'Tap each three times, firmly and slowly, with the phone a step away from the ground microphone.',
  },
} as const satisfies Record<string, Wording>
