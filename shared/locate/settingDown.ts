import type { Cover } from '../line/line'

/** Levels over the bands that are weighed; a weight of 0 means that the clip says nothing there. */
export interface BandRow {
  /** dBFS; meaningless where the weight is 0. */
  readonly levelDb: Float64Array
  /** Share of a full observation, 0 to 1. */
  readonly weight: Float64Array
}

/** One placing of the microphone as the fit sees it. */
export interface SettingDown {
  readonly point: number
  readonly alongM: number
  readonly offsetM: number
  readonly cover: Cover
  /** Which told stretch it stands on; −1 on none. */
  readonly stretch: number
  /** Index into the fit's list of sweeps. */
  readonly sweepIndex: number
  /** When in its sweep's walk, −0.5 to 0.5; 0 when no times were told. */
  readonly walk: number
  readonly on: BandRow | null
  readonly off: BandRow | null
  /** Rings a second with the air on, and the seconds listened; `null` without an air-on clip. */
  readonly rings: { readonly ratePerS: number; readonly listenedS: number; readonly bubbling: number } | null
  /** What a detector says of the air-on clip, nepers for a leak; `null` where none was asked. */
  readonly detectedNepers: number | null
}
