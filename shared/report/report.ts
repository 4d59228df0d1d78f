import type { PointSpectrum } from '../job/keptAnswer'
import type { Keyed } from '../words/sentence'

/** One line of a report: a key of shared/words with its values, and what is shown with it. */
export interface ReportItem {
  readonly text: Keyed
  /** Id of the pressure test whose curve stands below it, and whose gauge's unit it is told in. */
  readonly curveOf?: string
  /** Id of the pressure test in whose gauge's unit it is told. */
  readonly inUnitOf?: string
  /** Items that follow each other with the same group are kept together, and groups may stand side by side. */
  readonly group?: string
  /** Digest of a photo that stands below it. */
  readonly photo?: string
}

/** A text, a key of shared/words, or a number by a name that ends in its unit; `null` is left empty. */
export type ReportCell = string | Keyed | { readonly name: string; readonly value: number | null }

export interface ReportTable {
  readonly caption: Keyed
  readonly columns: readonly Keyed[]
  readonly rows: readonly (readonly ReportCell[])[]
}

/** A part of the report under its heading. */
export interface ReportSection {
  readonly id:
    | 'asked'
    | 'tested'
    | 'heard'
    | 'found'
    | 'mended'
    | 'cautions'
    | 'ask'
    | 'line'
    | 'sweep'
    | 'spectra'
    | 'tests'
    | 'provenance'
  readonly heading: string
  readonly items: readonly ReportItem[]
  readonly tables?: readonly ReportTable[]
  /** Of every point, to be drawn side by side. */
  readonly spectra?: readonly PointSpectrum[]
}

/** An item of text alone. */
export function reportItem(key: string, values: Keyed['values'] = {}): ReportItem {
  return { text: { key, values } }
}

/** A heading or caption without values. */
export function keyed(key: string, values: Keyed['values'] = {}): Keyed {
  return { key, values }
}
