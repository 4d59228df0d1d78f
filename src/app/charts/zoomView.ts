import type { PassBand } from '../../../shared/listen/passBand'

/** How far in one can go: a third of an octave over the whole width. */
const NARROWEST_OCTAVES = 1 / 3

/**
 * Part of a logarithmic frequency axis after a zoom about one of its places, which stays where it is on the screen.
 *
 * @param factor Above 1 goes in, below 1 out.
 * @returns Within the limits, moved there when needed.
 */
export function zoomView(
  view: PassBand,
  options: { readonly factor: number; readonly aboutHz: number },
  limits: PassBand,
) {
  const { factor, aboutHz } = options
  const share = Math.log(aboutHz / view.lowHz) / octaves(view)
  const most = octaves(limits)
  const least = Math.min(most, NARROWEST_OCTAVES * Math.LN2)
  const width = Math.min(most, Math.max(least, octaves(view) / factor))
  return placed(Math.log(aboutHz) - share * width, width, limits)
}

/** The same width, moved so that a frequency is in view. */
export function viewWith(view: PassBand, hz: number, limits: PassBand): PassBand {
  if (hz >= view.lowHz && hz <= view.highHz) return view
  const width = octaves(view)
  return placed(hz < view.lowHz ? Math.log(hz) : Math.log(hz) - width, width, limits)
}

function octaves({ lowHz, highHz }: PassBand): number {
  return Math.log(highHz / lowHz)
}

function placed(low: number, width: number, limits: PassBand): PassBand {
  const from = Math.min(Math.log(limits.highHz) - width, Math.max(Math.log(limits.lowHz), low))
  const within = (hz: number) => Math.min(limits.highHz, Math.max(limits.lowHz, hz))
  return { lowHz: within(Math.exp(from)), highHz: within(Math.exp(from + width)) }
}
