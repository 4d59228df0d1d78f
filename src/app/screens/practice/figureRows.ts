import type { Figures, ProgressBlock } from '../../../../shared/practice/progress'
import { formatNumber, formatQuantity } from '../../../../shared/words/formatQuantity'
import type { Say } from '../../frame/useSay'

/** Standard deviations of a 95 % interval. */
const SIDE = 1.96

export interface FigureRow {
  readonly key: string
  readonly cells: readonly string[]
}

/** What one table of figures is made of. */
export type FiguresOf = Pick<ProgressBlock, 'person' | 'machine' | 'alike'>

/** Rows of a table of figures; where the machine is asked less than the person, both on what it is asked as well. */
export function rowsOf({ person, machine, alike }: FiguresOf, say: Say): FigureRow[] {
  const rows = figureRows(person, machine, say)
  if (alike === null) return rows
  const [right] = figureRows(alike.person, alike.machine, say)
  return [...rows, { key: 'alike', cells: [say('label_figure_alike'), ...right!.cells.slice(1)] }]
}

/** Rows of a table of figures: a person's, and the machine's on the same questions. */
function figureRows(person: Figures, machine: Figures | null, say: Say): FigureRow[] {
  const row = (key: string, heading: string, text: (figures: Figures) => string) => ({
    key,
    cells: [heading, text(person), machine === null ? '' : text(machine)],
  })
  const rows = [
    row('right', say('label_figure_right'), ({ rightShare: { share, low, high } }) =>
      rangeText(share, low, high, 'share', say),
    ),
  ]
  if (person.sensitivity !== null) {
    rows.push(
      row('dprime', say('label_figure_dprime'), ({ sensitivity }) => {
        if (sensitivity === null) return ''
        const { dPrime, dPrimeSd } = sensitivity
        return rangeText(dPrime, dPrime - SIDE * dPrimeSd, dPrime + SIDE * dPrimeSd, '', say)
      }),
      row('criterion', say('label_figure_criterion'), ({ sensitivity }) => {
        if (sensitivity === null) return ''
        const { criterion, criterionSd } = sensitivity
        return rangeText(criterion, criterion - SIDE * criterionSd, criterion + SIDE * criterionSd, '', say)
      }),
    )
  }
  if (person.errorSpacings !== null) {
    rows.push(
      row('error', say('label_figure_error'), ({ errorSpacings }) =>
        errorSpacings === null ? '' : rangeText(errorSpacings.median, errorSpacings.low, errorSpacings.high, '', say),
      ),
    )
  }
  return rows
}

/** A figure with its interval. */
export function rangeText(value: number, low: number, high: number, unit: '' | 'db' | 'share', say: Say): string {
  const text = (each: number) => (unit === '' ? formatNumber(each, 1) : formatQuantity(unit, each))
  return say('label_range', { value: text(value), low: text(low), high: text(high) })
}
