import type { DigDimension } from '../../../../../shared/job/digDimensions'
import type { DrawnDigging } from '../../../../../shared/sketch/diggingOf'
import { formatQuantity } from '../../../../../shared/words/formatQuantity'
import { useSay } from '../../../frame/useSay'
import { Table } from '../../../look/widgets/Table'

const WHAT = { begin: 'label_dig_from', place: 'label_dig_place', end: 'label_dig_to' } as const

/** Above this two tapes do not tell where the hole is, m. Chosen: a spade and a half. */
const MOST_ERROR_M = 0.3

/** The tapes from both marks, and how sure each place is found again by them. */
export function DimensionsTable({ drawn: { marks, dimensions } }: { readonly drawn: DrawnDigging }) {
  const { say, units } = useSay()
  const [first, second] = marks
  if (first === undefined || second === undefined || dimensions.length === 0) return null
  const error = ({ errorM }: DigDimension) =>
    errorM > 10 ? say('label_error_none') : formatQuantity('error_m', errorM, units)
  return (
    <>
      <Table
        caption={say('label_dimensions')}
        columns={[
          { heading: say('label_column_piece') },
          { heading: say('label_column_tape', { name: first.name }), align: 'number' },
          { heading: say('label_column_tape', { name: second.name }), align: 'number' },
          { heading: say('label_column_error'), align: 'number' },
        ]}
        rows={dimensions.map((each) => ({
          key: each.what,
          cells: [
            say(WHAT[each.what]),
            formatQuantity('tape_m', each.firstM, units),
            formatQuantity('tape_m', each.secondM, units),
            error(each),
          ],
        }))}
      />
      <p className="soft">{say('dig_error_how')}</p>
      {dimensions.some(({ errorM }) => errorM > MOST_ERROR_M) && <p>{say('dig_tapes_flat')}</p>}
    </>
  )
}
