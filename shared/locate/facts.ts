import type { Line } from '../line/line'
import type { Sounding, Source } from './answer'
import type { FitModel } from './fitModel'
import type { HeardPoint } from './pointEvidence'
import type { Scan } from './scanLine'
import type { TriedSource } from './triedSource'

/** What the joint fit found, as verdict, reasons and advice need it. */
export interface Facts {
  /** As told; with the air inlet where it is heard when none was told. */
  readonly line: Line
  /** Where that is, m along; `null` where the inlet was told or none is heard. */
  readonly untoldInletM: number | null
  readonly model: FitModel
  readonly scan: Scan
  /** Even grid of places, m along. */
  readonly grid: Float64Array
  /** First and last place of the line, m. */
  readonly range: readonly [number, number]
  readonly spacingM: number
  /** The likeliest place, whatever the verdict will be. */
  readonly candidate: Source
  readonly points: readonly HeardPoint[]
  /** Every clip of the sweep, spoilt and missing ones too. */
  readonly soundings: readonly Sounding[]
  readonly known: readonly TriedSource[]
  /** How much better the ring counts fit with a leak at the likeliest place than without any, nepers. */
  readonly ringSupport: number
  /** The same of what a detector said; 0 where none was asked. */
  readonly detectorSupport: number
}
