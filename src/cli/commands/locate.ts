import { answerJson } from '../../../shared/answer/answerJson'
import type { HeardClip } from '../../../shared/evidence/heardClip'
import type { Sounding } from '../../../shared/locate/answer'
import { NOTHING_AGAINST } from '../../../shared/sweep/phoneAccount'
import { phoneProblems } from '../../../shared/sweep/phoneProblems'
import type { SweepRow } from '../../../shared/sweep/sweep'
import type { ShownUnits } from '../../../shared/words/shownUnits'
import { Analysts } from '../analysts'
import { answerText } from '../answerText'
import { type Args, lengthOption } from '../args'
import { CallError } from '../callError'
import { clearProgress, hasShades, jsonLine, pageWidth, print, showProgress } from '../print'
import { readSweepFolder, type SweepFolder } from '../readSweepFolder'
import { VERSION } from '../version'

const SPACING = { low: 0.01, high: 1000 }
const START = { low: -10_000, high: 10_000 }
const DEPTH = { low: 0.01, high: 20 }

/** `yardhark locate FOLDER`: from a folder of clips to a place to dig. */
export async function locateCommand(args: Args): Promise<void> {
  const [folder, ...more] = args.rest
  if (folder === undefined || folder === '')
    throw new CallError('locate needs the folder with the clips; yardhark locate --help')
  if (more.length > 0)
    throw new CallError(`locate takes one folder; leave out ${more.length === 1 ? 'the second' : 'the others'}`)
  const spacingM = lengthOption(args, 'spacing', SPACING)
  const startM = lengthOption(args, 'start', START)
  const depthM = lengthOption(args, 'depth', DEPTH)

  const told = readSweepFolder(folder, { spacingM, startM })
  const sweep: SweepFolder = depthM === null ? told : { ...told, line: { ...told.line, depthM } }
  const { soundings, answer } = await analyse(folder, sweep)
  if (args.options.has('json')) return print(jsonLine(answerJson(answer, VERSION)))

  const units: ShownUnits = args.options.has('feet') ? FEET : METRIC
  const style = { width: pageWidth(), shades: hasShades(), units }
  return print(answerText({ answer, line: sweep.line, problems: sweep.problems, soundings }, style))
}

const METRIC: ShownUnits = { length: 'm', pressure: 'kPa' }
const FEET: ShownUnits = { length: 'ft', pressure: 'psi' }

/** With what the phone said against its recording, where the sheet tells that. */
function soundingOf(row: SweepRow, { evidence, problems }: HeardClip): Sounding {
  return { row, evidence, problems: [...phoneProblems(row.phone ?? NOTHING_AGAINST), ...problems] }
}

async function analyse(folder: string, { rows, line }: SweepFolder) {
  const files = [...new Set(rows.map((row) => row.file))]
  const analysts = new Analysts(files.length)
  try {
    const heard = await analysts.listen(
      files.map((file) => ({ folder, file })),
      (done) => showProgress(`listening: ${done} of ${files.length} clips`),
    )
    const byFile = new Map(files.map((file, i) => [file, heard[i]!]))
    const soundings: Sounding[] = rows.map((row) => soundingOf(row, byFile.get(row.file)!))
    showProgress('locating')
    return { soundings, answer: await analysts.locate({ line, soundings }) }
  } finally {
    clearProgress()
    await analysts.close()
  }
}
