import { figures } from '../../../../shared/practice/progress'
import type { SetAnswer } from '../../../../shared/practice/set/practiceSet'
import { useSay } from '../../frame/useSay'
import { Table } from '../../look/widgets/Table'
import { figureRows } from './figureRows'
import type { OpenedSet } from './useSets'

/** How a person and the machine did on the same clips of a set; nothing before the first answer. */
export function SetFigures({ opened: { kept, set } }: { readonly opened: OpenedSet }) {
  const { say } = useSay()
  if (kept.answers.length === 0) return null
  const truthOf = (clip: number) => set.clips[clip]!.label
  const judged = (answers: readonly SetAnswer[], truth: (clip: number) => string) =>
    answers.map(({ clip, said }) => ({
      truth: truth(clip),
      said,
      right: said === truth(clip),
      errorSpacings: null,
    }))
  // The machine tells bubbling from everything else, and nothing finer.
  const machineTruth = (clip: number) =>
    set.drill === 'leak' || truthOf(clip) === 'bubbling' ? truthOf(clip) : 'something else'
  const machine = kept.machine ?? []
  const rows = figureRows(
    figures(judged(kept.answers, truthOf)),
    machine.length === 0 ? null : figures(judged(machine, machineTruth)),
    say,
  )
  return (
    <Table
      caption={say('label_figures_of', { drill: set.name })}
      columns={[{ heading: say('label_figure') }, { heading: say('label_you') }, { heading: say('label_machine') }]}
      rows={rows}
    />
  )
}
