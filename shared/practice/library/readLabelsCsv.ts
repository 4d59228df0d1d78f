import { FormatError } from '../../base/errors'
import { shown } from '../../base/shown'
import { csvRecords } from '../../sweep/csvRecords'
import { safePath } from '../../sweep/safePath'
import { SOUND_KINDS } from '../drills/question'
import { type ClipLabel, CONSENTS, type LibraryClip } from './libraryClip'

const LABELS: readonly string[] = ['leak', 'no leak', ...SOUND_KINDS]
/** Allowed and left out: clips of which nothing can be learned. */
const SPOILT = 'spoilt'
const COLUMNS = [
  'file',
  'label',
  'job',
  'along_m',
  'leak_at_m',
  'source',
  'consent',
  'licence',
  'cover',
  'device',
] as const
type Column = (typeof COLUMNS)[number]

/**
 * Reads the labels of a folder: `file`, `label`; optional `job`, `along_m`, `leak_at_m`, and what is told of the clips:
 * `source`, `consent` (given, own, invented), `licence`, `cover`, `device`. Unknown columns are passed over.
 *
 * @param text Without byte order mark.
 * @throws {FormatError} a missing column, an unknown label, a number that is none, a file twice; with the row.
 */
export function readLabelsCsv(text: string, fileName: string): LibraryClip[] {
  const [header, ...records] = csvRecords(text, delimiterOf(text), fileName)
  if (header === undefined) throw new FormatError(fileName, '', 'is empty; the first row must name file and label')
  const names = header.cells.map((cell) => cell.trim().toLowerCase())
  for (const wanted of ['file', 'label']) {
    if (!names.includes(wanted)) throw new FormatError(fileName, 'row 1', `the column ${wanted} is missing; name it`)
  }
  const seen = new Set<string>()
  return records.flatMap(({ cells, row }) => {
    const cell = (column: Column) => (cells[names.indexOf(column)] ?? '').trim()
    const fail = (column: Column, mend: string) => new FormatError(fileName, `row ${row}, ${column}`, mend)
    const file = safePath(cell('file'))
    if (!file.ok) throw fail('file', file.mend)
    if (seen.has(file.path)) throw fail('file', `${shown(file.path)} stands twice; keep one row`)
    seen.add(file.path)
    const label = cell('label').toLowerCase()
    if (label === SPOILT) return []
    if (!LABELS.includes(label)) throw fail('label', `is ${shown(cell('label'))}; write one of ${LABELS.join(', ')}`)
    const consent = cell('consent').toLowerCase() || 'not told'
    const known = CONSENTS.find((each) => each === consent)
    if (known === undefined) throw fail('consent', `is ${shown(cell('consent'))}; write one of ${CONSENTS.join(', ')}`)
    const number = (column: Column) => {
      const told = cell(column)
      if (told === '') return null
      const value = /^[+-]?\d+(?:[.,]\d+)?$/.test(told) ? Number(told.replace(',', '.')) : Number.NaN
      if (!Number.isFinite(value)) throw fail(column, `is ${shown(told)}; write a number, like 3.5`)
      return value + 0
    }
    return [
      {
        file: file.path,
        label: label as ClipLabel,
        source: cell('source'),
        consent: known,
        licence: cell('licence'),
        invented: known === 'invented',
        job: cell('job'),
        alongM: number('along_m'),
        leakAtM: number('leak_at_m'),
        cover: cell('cover'),
        device: cell('device'),
      },
    ]
  })
}

function delimiterOf(text: string): string {
  const first = text.split(/\r\n|\r|\n/, 1)[0]!
  return [',', ';', '\t'].reduce((best, each) => (first.split(each).length > first.split(best).length ? each : best))
}
