import { progress } from '../../../../shared/practice/progress'
import { setAnswers } from '../../../../shared/practice/set/setAnswers'
import { useSay } from '../../frame/useSay'
import { Table } from '../../look/widgets/Table'
import { rowsOf } from './figureRows'
import type { OpenedSet } from './useSets'

/** How a person and the machine did on the same clips of a set; nothing before the first answer. */
export function SetFigures({ opened: { kept, set } }: { readonly opened: OpenedSet }) {
  const { say } = useSay()
  const answered = [{ set, log: kept, machine: kept.machine ?? [] }]
  const answers = [false, true].flatMap((invented) => setAnswers(answered, set.drill, invented))
  const { whole } = progress(answers, set.drill)
  if (whole === null) return null
  return (
    <Table
      caption={say('label_figures_of', { drill: set.name })}
      columns={[{ heading: say('label_figure') }, { heading: say('label_you') }, { heading: say('label_machine') }]}
      rows={rowsOf(whole, say)}
    />
  )
}
