import { useMemo } from 'react'
import { nextSteps } from '../../../../../shared/answer/nextSteps'
import { NO_DIGGING } from '../../../../../shared/job/digging'
import { type DigPlan, digPlan } from '../../../../../shared/job/digPlan'
import type { JobLine } from '../../../../../shared/job/job'
import type { LocateAnswer } from '../../../../../shared/locate/answer'
import { CHOICE_WORDS } from '../../../../../shared/report/choiceWords'
import { formatQuantity } from '../../../../../shared/words/formatQuantity'
import { CautionsPart } from '../../../frame/CautionsPart'
import { useAppState } from '../../../frame/useApp'
import { useSay } from '../../../frame/useSay'
import { Disclosure } from '../../../look/widgets/Disclosure'
import { Panel } from '../../../look/widgets/Panel'
import { Table } from '../../../look/widgets/Table'
import { CostFields } from './CostFields'
import { DigSketchPart } from './DigSketchPart'
import { RoundFields } from './RoundFields'
import './OpenPart.css'

export interface OpenPartProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}

/** Where to open, in which order and at what cost, what to mind before, and how the place is taped. Only for a place that is located. */
export function OpenPart({ line, answer }: OpenPartProps) {
  const { say, sayKeyed, units } = useSay()
  const readOnly = useAppState((state) => state.session.readOnly)
  const digging = line.digging ?? NO_DIGGING
  const plan = useMemo(() => digPlan(line.line, answer, digging), [line.line, answer, digging])
  const { dig } = nextSteps(answer, line.line, units)
  if (dig.length === 0 || plan.pieces.length === 0) return null
  const part = { line, answer, disabled: readOnly }
  return (
    <>
      <Panel heading={say('heading_open')}>
        <ul className="stack-small">
          {dig
            .map((step) =>
              step
                .filter(({ key }) => key !== 'next_dig_cost')
                .map(sayKeyed)
                .join(' '),
            )
            .map((step) => (
              <li key={step}>{step}</li>
            ))}
        </ul>
        <PiecesTable plan={plan} />
        <PlanSaid plan={plan} />
        <CostFields {...part} plan={plan} />
        <Disclosure summary={say('label_round')}>
          <RoundFields {...part} digging={digging} plan={plan} />
        </Disclosure>
      </Panel>
      <CautionsPart step="dig" />
      <DigSketchPart {...part} digging={digging} />
    </>
  )
}

function PiecesTable({ plan: { pieces } }: { readonly plan: DigPlan }) {
  const { say, units } = useSay()
  return (
    <Table
      caption={say('label_open_pieces')}
      columns={[
        { heading: say('label_column_piece') },
        { heading: say('label_column_cover') },
        { heading: say('label_column_chance'), align: 'number' },
        { heading: say('label_column_cost'), align: 'number' },
        { heading: say('label_column_open_time'), align: 'number' },
      ]}
      rows={pieces.map(({ fromM, toM, cover, probability, cost, minutes }) => ({
        key: String(fromM),
        cells: [
          say('label_piece_range', { from_m: fromM, to_m: toM }),
          say(cover === null ? 'label_cover_untold' : CHOICE_WORDS.cover[cover]),
          formatQuantity('probability', probability, units),
          cost === null ? '' : formatQuantity('cost', cost, units),
          minutes === null ? '' : formatQuantity('open_min', minutes, units),
        ],
      }))}
    />
  )
}

/** What the order is expected to cost and take, and what it saves. */
function PlanSaid({ plan }: { readonly plan: DigPlan }) {
  const { say } = useSay()
  const { pieces, expectedCost, likeliestFirstCost, expectedMin, slabLastSaves } = plan
  const said: string[] = []
  if (expectedCost !== null && likeliestFirstCost !== null) {
    const costs = { expected_cost: expectedCost, likeliest_first_cost: likeliestFirstCost }
    said.push(
      pieces.length > 1 ? say('open_expected', costs) : say('open_expected_one', { expected_cost: expectedCost }),
    )
  }
  if (slabLastSaves !== null && slabLastSaves > 0) said.push(say('open_slab_last', { saved_cost: slabLastSaves }))
  if (expectedMin !== null) said.push(say('open_expected_min', { expected_min: expectedMin }))
  return said.length === 0 ? null : <p>{said.join(' ')}</p>
}
