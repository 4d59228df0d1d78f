import type { Figures, ProgressBlock } from '../../../../shared/practice/progress'
import { formatNumber } from '../../../../shared/words/formatQuantity'
import { useSay } from '../../frame/useSay'

/** Of the drawing, in its own units. */
const SIZE = { width: 320, height: 150, left: 34, right: 8, top: 10, bottom: 24 } as const

/** Standard deviations of a 95 % interval. */
const SIDE = 1.96

interface Figure {
  readonly value: number
  readonly low: number
  readonly high: number
}

/** How a figure goes from block to block, with its interval, and the machine's beside it. The table below says the same. */
export function ProgressCurve({ blocks }: { readonly blocks: readonly ProgressBlock[] }) {
  const { say } = useSay()
  const kind = kindOf(blocks)
  const of = (figures: Figures | null) => (figures === null ? null : FIGURES[kind].of(figures))
  const points = blocks.map(({ person, machine }) => ({ you: of(person), machine: of(machine) }))
  const ends = points
    .flatMap(({ you, machine }) => [you?.low, you?.high, machine?.value])
    .filter((end) => end !== undefined)
  if (ends.length === 0) return null
  const low = Math.min(0, ...ends)
  const high = Math.max(1, ...ends)
  const x = (i: number) => SIZE.left + ((i + 0.5) / blocks.length) * (SIZE.width - SIZE.left - SIZE.right)
  const y = (value: number) => SIZE.top + (1 - (value - low) / (high - low)) * (SIZE.height - SIZE.top - SIZE.bottom)
  const path = points.flatMap(({ you }, i) => (you === null ? [] : [`${x(i)} ${y(you.value)}`])).join('L')
  const name = say(FIGURES[kind].words)
  return (
    <figure className="practice-curve">
      <figcaption>{say('label_progress_curve', { what: name })}</figcaption>
      <svg viewBox={`0 0 ${SIZE.width} ${SIZE.height}`} aria-hidden="true">
        {ticks(low, high).map((tick) => (
          <g key={tick}>
            <path className="practice-curve-rule" d={`M${SIZE.left} ${y(tick)}H${SIZE.width - SIZE.right}`} />
            <text x={SIZE.left - 6} y={y(tick)} dy="0.35em" textAnchor="end">
              {kind === 'right' ? `${Math.round(100 * tick)} %` : formatNumber(tick, 0)}
            </text>
          </g>
        ))}
        <path className="practice-curve-line" d={`M${path}`} />
        {points.map(({ you, machine }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: blocks stay where they are
          <g key={i}>
            {you !== null && <path className="practice-curve-bar" d={`M${x(i)} ${y(you.low)}V${y(you.high)}`} />}
            {you !== null && (
              <rect className="practice-curve-you" x={x(i) - 4} y={y(you.value) - 4} width="8" height="8" rx="2" />
            )}
            {machine !== null && (
              <rect
                className="practice-curve-machine"
                x={x(i) + 6}
                y={y(machine.value) - 4}
                width="8"
                height="8"
                rx="2"
              />
            )}
            <text x={x(i)} y={SIZE.height - 6} textAnchor="middle">
              {i + 1}
            </text>
          </g>
        ))}
      </svg>
      <p className="soft practice-curve-key">
        <svg viewBox="0 0 12 12" aria-hidden="true">
          <rect className="practice-curve-you" x="2" y="2" width="8" height="8" rx="2" />
        </svg>
        {say('label_curve_you')}
        {points.some(({ machine }) => machine !== null) && (
          <>
            <svg viewBox="0 0 12 12" aria-hidden="true">
              <rect className="practice-curve-machine" x="2" y="2" width="8" height="8" rx="2" />
            </svg>
            {say('label_curve_machine')}
          </>
        )}
      </p>
    </figure>
  )
}

const FIGURES = {
  right: {
    words: 'label_figure_right',
    of: ({ rightShare: { share, low, high } }: Figures): Figure | null => ({ value: share, low, high }),
  },
  sensitivity: {
    words: 'label_figure_dprime',
    of: ({ sensitivity }: Figures): Figure | null =>
      sensitivity === null
        ? null
        : {
            value: sensitivity.dPrime,
            low: sensitivity.dPrime - SIDE * sensitivity.dPrimeSd,
            high: sensitivity.dPrime + SIDE * sensitivity.dPrimeSd,
          },
  },
  error: {
    words: 'label_figure_error',
    of: ({ errorSpacings }: Figures): Figure | null =>
      errorSpacings === null ? null : { value: errorSpacings.median, low: errorSpacings.low, high: errorSpacings.high },
  },
} as const

/** The figure that says most of a drill. */
function kindOf(blocks: readonly ProgressBlock[]): keyof typeof FIGURES {
  if (blocks.some(({ person }) => person.errorSpacings !== null)) return 'error'
  return blocks.some(({ person }) => person.sensitivity !== null) ? 'sensitivity' : 'right'
}

function ticks(low: number, high: number): number[] {
  const step = high - low > 2 ? 1 : 0.5
  const first = Math.ceil(low / step)
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) => (first + i) * step)
}
