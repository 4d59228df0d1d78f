import type { PracticeAnswer } from '../../../../shared/practice/answers'
import { DRILLS, type Drill } from '../../../../shared/practice/drills/question'
import { progress } from '../../../../shared/practice/progress'
import { FEWEST_TRIALS } from '../../../../shared/practice/staircase/threshold'
import { formatQuantity } from '../../../../shared/words/formatQuantity'
import { useSay } from '../../frame/useSay'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Panel } from '../../look/widgets/Panel'
import { Table } from '../../look/widgets/Table'
import { DRILL_WORDS } from './drillWords'
import { figureRows, rangeText } from './figureRows'

/** How it goes, with how sure that is, and the machine beside it. */
export function ProgressPart({ answers }: { readonly answers: readonly PracticeAnswer[] }) {
  const { say } = useSay()
  const done = DRILLS.filter((drill) => answers.some(({ order }) => order.drill === drill))
  return (
    <Panel heading={say('heading_progress')}>
      {done.length === 0 && <p>{say('practice_none_yet')}</p>}
      {done.map((drill) => (
        <DrillProgress key={drill} drill={drill} answers={answers} />
      ))}
      {done.length > 0 && <p className="soft">{say('practice_figures_hint')}</p>}
    </Panel>
  )
}

function DrillProgress({ drill, answers }: { readonly drill: Drill; readonly answers: readonly PracticeAnswer[] }) {
  const { say } = useSay()
  const { blocks, whole, threshold } = progress(answers, drill)
  if (whole === null) return null
  const name = say(DRILL_WORDS[drill][0])
  const figures = figureRows(whole.person, null, say)
  const rows = figureRows(whole.person, whole.machine, say)
  const heard = threshold === null ? null : rangeText(threshold.levelDb, threshold.lowDb, threshold.highDb, 'db', say)
  if (heard !== null) rows.push({ key: 'threshold', cells: [say('label_figure_threshold'), heard, ''] })
  return (
    <div className="stack-small">
      <Table
        caption={say('label_figures_of', { drill: name })}
        columns={[{ heading: say('label_figure') }, { heading: say('label_you') }, { heading: say('label_machine') }]}
        rows={rows}
      />
      {threshold === null && <p className="soft">{say('practice_threshold_later', { count: FEWEST_TRIALS })}</p>}
      {blocks.length > 1 && (
        <Disclosure summary={say('label_over_time', { drill: name })}>
          <Table
            caption={say('label_over_time', { drill: name })}
            captionUnseen
            columns={[
              { heading: say('label_block') },
              { heading: say('label_block_level'), align: 'number' },
              ...figures.map(({ cells }) => ({ heading: cells[0]! })),
              { heading: say('label_machine_right') },
            ]}
            rows={blocks.map(({ fromS, levelDb, person, machine }, i) => ({
              key: String(fromS),
              cells: [
                `${i === 0 ? 1 : blocks.slice(0, i).reduce((sum, block) => sum + block.person.count, 1)} +${person.count}`,
                formatQuantity('level_db', levelDb),
                ...figures.map(
                  ({ key }) => figureRows(person, null, say).find((row) => row.key === key)?.cells[1] ?? '',
                ),
                figureRows(person, machine, say)[0]!.cells[2]!,
              ],
            }))}
          />
          <p className="soft">{say('practice_over_time_hint')}</p>
        </Disclosure>
      )}
    </div>
  )
}
