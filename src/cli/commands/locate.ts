import { answerJson } from '../../../shared/answer/answerJson'
import type { HeardClip } from '../../../shared/evidence/heardClip'
import { detected } from '../../../shared/learn/detected'
import type { DetectorModel } from '../../../shared/learn/model'
import type { Line } from '../../../shared/line/line'
import { stretchAt } from '../../../shared/line/stretchAt'
import type { Sounding } from '../../../shared/locate/answer'
import { NOTHING_AGAINST } from '../../../shared/sweep/phoneAccount'
import { phoneProblems } from '../../../shared/sweep/phoneProblems'
import type { SweepRow } from '../../../shared/sweep/sweep'
import type { ShownUnits } from '../../../shared/words/shownUnits'
import { Analysts } from '../analysts'
import { answerText } from '../answerText'
import { type Args, lengthOption } from '../args'
import { CallError } from '../callError'
import { measuredClips } from '../measuredClips'
import { clearProgress, hasShades, jsonLine, pageWidth, print, showProgress } from '../print'
import { readModelFile } from '../readModelFile'
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
  const modelPath = args.options.get('detector')
  const model = modelPath === undefined ? null : readModelFile(modelPath, 'locate')
  const asked = model && { model, device: args.options.get('device') ?? '', cache: args.options.get('cache') }
  const { soundings, answer } = await analyse(folder, sweep, asked)
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

/** A detector that is to be asked, and what it is told of the clips. */
interface Asked {
  readonly model: DetectorModel
  readonly device: string
  readonly cache: string | undefined
}

/** The air-on clips with what the detector says of each. */
async function withDetector(
  folder: string,
  soundings: readonly Sounding[],
  { line, asked }: { line: Line; asked: Asked },
): Promise<Sounding[]> {
  const files = [...new Set(soundings.filter(({ row }) => row.air === 'on').map(({ row }) => row.file))]
  const measured = await measuredClips(
    files.map((file) => ({ folder, file })),
    asked.cache,
  )
  return soundings.map((sounding) => {
    const { row } = sounding
    const values = measured[files.indexOf(row.file)]?.values ?? null
    if (row.air === 'off' || values === null) return sounding
    const told = { device: asked.device, cover: stretchAt(line, row.alongM)?.cover ?? '' }
    return { ...sounding, detected: detected(asked.model, values, told) }
  })
}

async function analyse(folder: string, { rows, line }: SweepFolder, asked: Asked | null) {
  const files = [...new Set(rows.map((row) => row.file))]
  const analysts = new Analysts(files.length)
  try {
    const heard = await analysts.listen(
      files.map((file) => ({ folder, file })),
      (done) => showProgress(`listening: ${done} of ${files.length} clips`),
    )
    const byFile = new Map(files.map((file, i) => [file, heard[i]!]))
    const heardAll = rows.map((row) => soundingOf(row, byFile.get(row.file)!))
    const soundings = asked === null ? heardAll : await withDetector(folder, heardAll, { line, asked })
    showProgress('locating')
    return { soundings, answer: await analysts.locate({ line, soundings }) }
  } finally {
    clearProgress()
    await analysts.close()
  }
}
