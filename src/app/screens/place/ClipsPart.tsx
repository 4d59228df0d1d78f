import type { Problem } from '../../../../shared/base/problem'
import { printable } from '../../../../shared/base/shown'
import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { useSay } from '../../frame/useSay'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Panel } from '../../look/widgets/Panel'

export interface ClipsPartProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}

/** Clips that were set aside, and what else was noticed of clips, sheet and line. */
export function ClipsPart({ line, answer }: ClipsPartProps) {
  const { say, sayKeyed } = useSay()
  const aside = answer.clips.filter((clip) => !clip.used)
  const told = [...line.problems, ...line.sweeps.flatMap((sweep) => sweep.problems)]
  const noted = groups(answer)
  if (aside.length + told.length + noted.length === 0) return null
  return (
    <Panel heading={say('label_clips')}>
      {aside.length > 0 && (
        <div className="stack-small">
          <h3>{say('heading_set_aside')}</h3>
          <ul className="stack-small">
            {aside.map(({ file, problems }, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: clips of two sweeps may have one name, and their order is fixed
              <li key={i}>
                {say('label_clips_said', {
                  file,
                  said: problems.filter(isSpoilt).map(sayKeyed).join(' '),
                })}
              </li>
            ))}
          </ul>
        </div>
      )}
      {told.length + noted.length > 0 && (
        <Disclosure summary={say('heading_noted')}>
          <ul className="stack-small">
            {told.map((problem) => (
              <li key={JSON.stringify(problem)}>{sayKeyed(problem)}</li>
            ))}
            {noted.map(({ problem, files: [first, ...more] }) => (
              <li key={problem.key}>
                {more.length === 0
                  ? say('label_clips_said', { file: first!, said: sayKeyed(problem) })
                  : say('label_also', { file: first!, more: more.length, said: sayKeyed(problem) })}
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
    </Panel>
  )
}

const isSpoilt = (problem: Problem) => problem.severity === 'spoilt'

/** One entry for all used clips that say the same. */
function groups({ clips }: LocateAnswer): { problem: Problem; files: string[] }[] {
  const found = new Map<string, { problem: Problem; files: string[] }>()
  for (const { file, used, problems } of clips) {
    for (const problem of used ? problems : []) {
      const group = found.get(problem.key) ?? { problem, files: [] }
      group.files.push(printable(file))
      found.set(problem.key, group)
    }
  }
  return [...found.values()]
}
