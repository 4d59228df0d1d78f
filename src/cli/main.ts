import '../../shared/words/speakAll'
import { isMainThread } from 'node:worker_threads'
import { FormatError } from '../../shared/base/errors'
import { nearestWord } from '../../shared/base/nearestWord'
import { printable } from '../../shared/base/shown'
import { COMMAND_HELP } from '../../shared/words/commandHelp'
import { serveTasks } from './analyser'
import { type Args, type OptionTable, parseArgs } from './args'
import { CallError } from './callError'
import {
  EVALUATE_OPTIONS,
  INSPECT_OPTIONS,
  LOCATE_OPTIONS,
  MERGE_OPTIONS,
  OPEN_OPTIONS,
  PACK_OPTIONS,
  REPORT_OPTIONS,
  SCORE_OPTIONS,
  SYNTH_OPTIONS,
  TRAIN_OPTIONS,
  VERIFY_OPTIONS,
} from './commandOptions'
import { evaluateCommand } from './commands/evaluate'
import { inspectCommand } from './commands/inspect'
import { locateCommand } from './commands/locate'
import { mergeCommand } from './commands/merge'
import { openCommand } from './commands/open'
import { packCommand } from './commands/pack'
import { reportCommand } from './commands/report'
import { scoreCommand } from './commands/score'
import { synthCommand } from './commands/synth'
import { trainCommand } from './commands/train'
import { verifyCommand } from './commands/verify'
import { clearProgress, complain, print } from './print'
import { VERSION } from './version'

interface Command {
  readonly options: OptionTable
  readonly run: (args: Args) => Promise<void>
  readonly help: string
}

const COMMANDS: Readonly<Record<string, Command>> = {
  locate: { options: LOCATE_OPTIONS, run: locateCommand, help: COMMAND_HELP.locate },
  inspect: { options: INSPECT_OPTIONS, run: inspectCommand, help: COMMAND_HELP.inspect },
  synth: { options: SYNTH_OPTIONS, run: synthCommand, help: COMMAND_HELP.synth },
  pack: { options: PACK_OPTIONS, run: packCommand, help: COMMAND_HELP.pack },
  open: { options: OPEN_OPTIONS, run: openCommand, help: COMMAND_HELP.open },
  verify: { options: VERIFY_OPTIONS, run: verifyCommand, help: COMMAND_HELP.verify },
  merge: { options: MERGE_OPTIONS, run: mergeCommand, help: COMMAND_HELP.merge },
  train: { options: TRAIN_OPTIONS, run: trainCommand, help: COMMAND_HELP.train },
  score: { options: SCORE_OPTIONS, run: scoreCommand, help: COMMAND_HELP.score },
  evaluate: { options: EVALUATE_OPTIONS, run: evaluateCommand, help: COMMAND_HELP.evaluate },
  report: { options: REPORT_OPTIONS, run: reportCommand, help: COMMAND_HELP.report },
}

const WRONG_CALL = 2
const FAULT = 1
const INTERRUPTED = 130 // 128 and the signal's number, as shells count it

async function main(words: readonly string[]): Promise<void> {
  const [first, ...rest] = words
  if (first === '--version') return print(`yardhark ${VERSION}\n`)
  if (first === '--help' || first === '-h' || first === 'help') return print(helpOn(rest[0]))
  if (first === undefined) throw new CallError('no command; yardhark --help lists them')
  if (!Object.hasOwn(COMMANDS, first)) throw unknownCommand(first)
  const command = COMMANDS[first]!
  if (rest.includes('--help') || rest.includes('-h')) return print(command.help)
  return command.run(parseArgs(rest, command.options))
}

function helpOn(name: string | undefined): string {
  if (name === undefined || name.startsWith('-')) return COMMAND_HELP.all
  if (!Object.hasOwn(COMMANDS, name)) throw unknownCommand(name)
  return COMMANDS[name]!.help
}

function unknownCommand(word: string): CallError {
  const near = nearestWord(word, Object.keys(COMMANDS))
  const what = word.startsWith('-') ? 'option' : 'command'
  return new CallError(
    `there is no ${what} ${printable(word, 60)}; ${near === null ? 'yardhark --help lists them' : `did you mean ${near}?`}`,
  )
}

function onTrouble(error: unknown): void {
  if (error instanceof CallError || error instanceof FormatError) {
    complain(error.message)
    process.exitCode = WRONG_CALL
    return
  }
  const what = error instanceof Error ? (error.stack ?? error.message) : String(error)
  complain(`a fault of this program, please report it: ${printable(what.replace(/\s+/g, ' '), 600)}`)
  process.exitCode = FAULT
}

if (isMainThread) {
  process.on('SIGINT', () => {
    clearProgress()
    process.exit(INTERRUPTED)
  })
  // A reader that has seen enough (`yardhark ... | head`) is no trouble.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit()
    onTrouble(error)
  })
  main(process.argv.slice(2)).catch(onTrouble)
} else {
  serveTasks()
}
