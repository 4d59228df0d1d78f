import type { Keyed } from '../words/sentence'

/** One line of a report: a key of shared/words with its values, and what is shown with it. */
export interface ReportItem {
  readonly text: Keyed
  /** Id of the pressure test whose curve stands below it. */
  readonly curveOf?: string
  /** Digest of a photo that stands below it. */
  readonly photo?: string
}

/** A part of the report under its heading. */
export interface ReportSection {
  readonly id: 'asked' | 'tested' | 'heard' | 'found' | 'mended' | 'cautions' | 'ask' | 'office'
  readonly heading: string
  readonly items: readonly ReportItem[]
}

/** An item of text alone. */
export function reportItem(key: string, values: Keyed['values'] = {}): ReportItem {
  return { text: { key, values } }
}
