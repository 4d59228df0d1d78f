import { FormatError } from '../base/errors'
import { shown } from '../base/shown'
import { type CsvRecord, csvRecords } from '../sweep/csvRecords'
import { safePath } from '../sweep/safePath'

/** What a clip can be labelled as; a spoilt one teaches nothing. */
export const LABELS = ['leak', 'no leak', 'spoilt'] as const
export type Label = (typeof LABELS)[number]

/** One labelled clip of a folder. */
export interface LabelledClip {
  /** Path within the folder. */
  readonly file: string
  readonly label: Label
  /** The job it came from; empty when the sheet does not say. */
  readonly job: string
  readonly device: string
  readonly cover: string
  /** Where it was recorded and where the leak was found, m along the line; `null` when not told. */
  readonly alongM: number | null
  readonly leakAtM: number | null
}

/** Chosen: a crew's clips of some years. */
const MOST_CLIPS = 20_000
const MOST_M = 100_000
const NEEDED = ['file', 'label'] as const

/**
 * Reads a folder's `labels.csv`: columns file and label, and if known job, device, cover, along_m, leak_at_m; others are passed over.
 *
 * @param fileName For messages.
 * @throws {FormatError} a missing column, an unknown label, a path that leaves the folder, two rows of one file, text for a
 *   number; with the row and the mend.
 */
export function readLabels(text: string, fileName: string): LabelledClip[] {
  const plain = text.startsWith('\ufeff') ? text.slice(1) : text
  const delimiter = [',', ';', '\t'].find((each) => plain.split(/[\r\n]/, 1)[0]!.includes(each)) ?? ','
  const [header, ...records] = csvRecords(plain, delimiter, fileName, MOST_CLIPS)
  const columns = new Map((header?.cells ?? []).map((name, at) => [name.trim().toLowerCase(), at]))
  for (const needed of NEEDED) {
    if (!columns.has(needed)) {
      throw new FormatError(fileName, 'row 1', `has no column ${needed}; the header must name file and label`)
    }
  }
  const rowOf = new Map<string, number>()
  return records.map((record) => {
    const clip = readClip(record, columns, fileName)
    const before = rowOf.get(clip.file)
    if (before !== undefined) {
      throw new FormatError(
        fileName,
        `row ${record.row}`,
        `names ${shown(clip.file)} again after row ${before}; keep one`,
      )
    }
    rowOf.set(clip.file, record.row)
    return clip
  })
}

function readClip(record: CsvRecord, columns: ReadonlyMap<string, number>, fileName: string): LabelledClip {
  const place = (column: string) => `row ${record.row}, ${column}`
  const text = (column: string) => (record.cells[columns.get(column) ?? -1] ?? '').trim()
  const path = safePath(text('file'))
  if (!path.ok) throw new FormatError(fileName, place('file'), `${shown(text('file'))} ${path.mend}`)
  const label = LABELS.find((each) => each === text('label').toLowerCase())
  if (label === undefined) {
    throw new FormatError(fileName, place('label'), `is ${shown(text('label'))}; write ${LABELS.join(', ')}`)
  }
  const metres = (column: string) => {
    if (text(column) === '') return null
    const value = Number(text(column))
    if (!(Math.abs(value) <= MOST_M)) {
      throw new FormatError(fileName, place(column), `is ${shown(text(column))}; write metres, like 3.5`)
    }
    return value
  }
  return {
    file: path.path,
    label,
    job: text('job'),
    device: text('device'),
    cover: text('cover'),
    alongM: metres('along_m'),
    leakAtM: metres('leak_at_m'),
  }
}
