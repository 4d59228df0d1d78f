import { useMemo } from 'react'
import type { PracticeAnswer } from '../../../../shared/practice/answers'
import { DRILLS, type Drill } from '../../../../shared/practice/drills/question'
import { type ProgressBlock, progress } from '../../../../shared/practice/progress'
import { SET_DRILLS } from '../../../../shared/practice/set/practiceSet'
import { setAnswers } from '../../../../shared/practice/set/setAnswers'
import { FEWEST_TRIALS } from '../../../../shared/practice/staircase/threshold'
import { formatQuantity } from '../../../../shared/words/formatQuantity'
import { type Say, useSay } from '../../frame/useSay'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Panel } from '../../look/widgets/Panel'
import { Table } from '../../look/widgets/Table'
import { DRILL_WORDS } from './drillWords'
import { rangeText, rowsOf } from './figureRows'
import { ProgressCurve } from './ProgressCurve'
import type { OpenedSet } from './useSets'

interface ProgressPartProps {
  readonly answers: readonly PracticeAnswer[]
  readonly sets: readonly OpenedSet[]
}

/** How it goes, with how sure that is, and the machine beside it: of the drills, and of the clips of sets. */
export function ProgressPart({ answers, sets }: ProgressPartProps) {
  const { say } = useSay()
  const done = DRILLS.filter((drill) => answers.some(({ order }) => order.drill === drill))
  const ofSets = useMemo(() => answersOfSets(sets, say), [sets, say])
  const isEmpty = done.length === 0 && ofSets.length === 0
  return (
    <Panel heading={say('heading_progress')}>
      {isEmpty && <p>{say('practice_none_yet')}</p>}
      {done.map((drill) => (
        <DrillProgress key={drill} name={say(DRILL_WORDS[drill][0])} drill={drill} answers={answers} />
      ))}
      {ofSets.map((each) => (
        <DrillProgress key={each.name} {...each} />
      ))}
      {!isEmpty && <p className="soft">{say('practice_figures_hint')}</p>}
    </Panel>
  )
}

interface DrillProgressProps {
  readonly name: string
  readonly drill: Drill
  readonly answers: readonly PracticeAnswer[]
}

/** Recorded and invented clips apart: only the first tell how somebody hears outside. */
function answersOfSets(sets: readonly OpenedSet[], say: Say): DrillProgressProps[] {
  const answered = sets.map(({ set, kept }) => ({ set, log: kept, machine: kept.machine ?? [] }))
  return SET_DRILLS.flatMap((drill) =>
    ([false, true] as const).flatMap((invented) => {
      const answers = setAnswers(answered, drill, invented)
      const name = say(invented ? 'label_invented_clips' : 'label_real_clips', { drill: say(DRILL_WORDS[drill][0]) })
      return answers.length === 0 ? [] : [{ name, drill, answers }]
    }),
  )
}

function DrillProgress({ name, drill, answers }: DrillProgressProps) {
  const { say } = useSay()
  const { blocks, whole, threshold } = useMemo(() => progress(answers, drill), [answers, drill])
  if (whole === null) return null
  const rows = rowsOf(whole, say)
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
          <ProgressCurve blocks={blocks} />
          <BlockTable name={name} blocks={blocks} whole={whole} />
          <p className="soft">{say('practice_over_time_hint')}</p>
        </Disclosure>
      )}
    </div>
  )
}

interface BlockTableProps {
  readonly name: string
  readonly blocks: readonly ProgressBlock[]
  readonly whole: Pick<ProgressBlock, 'person' | 'machine' | 'alike'>
}

function BlockTable({ name, blocks, whole }: BlockTableProps) {
  const { say } = useSay()
  const own = ({ person }: Pick<ProgressBlock, 'person'>) => rowsOf({ person, machine: null, alike: null }, say)
  const figures = own(whole)
  return (
    <Table
      caption={say('label_over_time', { drill: name })}
      captionUnseen
      columns={[
        { heading: say('label_block') },
        { heading: say('label_block_level'), align: 'number' },
        ...figures.map(({ cells }) => ({ heading: cells[0]! })),
        { heading: say('label_machine_right') },
      ]}
      rows={blocks.map((block, i) => ({
        key: `${i} ${block.fromS}`,
        cells: [
          `${blocks.slice(0, i).reduce((sum, { person }) => sum + person.count, 1)} +${block.person.count}`,
          block.levelDb === null ? say('label_none') : formatQuantity('level_db', block.levelDb),
          ...figures.map(({ key }) => own(block).find((row) => row.key === key)?.cells[1] ?? ''),
          rowsOf(block, say).at(block.alike === null ? 0 : -1)!.cells[2]!,
        ],
      }))}
    />
  )
}
