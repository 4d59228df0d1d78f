import type { JobLine, JobSweep } from '../../../../shared/job/job'
import { evenLayout } from '../../../../shared/sweep/evenLayout'
import type { NumberedLayout } from '../../../../shared/sweep/rowsFromNames'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { OpenButtons } from '../../open/OpenButtons'
import { changeSpacing } from '../../store/actions/changeSpacing'
import { removeSweep } from '../../store/actions/removeSweep'
import { ALONG_LIMITS } from './linePart'

export interface SweepsPartProps {
  readonly jobLine: JobLine
  readonly disabled: boolean
  /** The end of one change: what follows is another step of undo. */
  readonly onDone: () => void
}

/** The sweeps along this line, and more of them. */
export function SweepsPart({ jobLine, disabled, onDone }: SweepsPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  return (
    <Panel heading={say('heading_sweeps')}>
      {jobLine.sweeps.length === 0 ? (
        <p>{say('sweeps_none')}</p>
      ) : (
        <>
          {jobLine.sweeps.length > 1 && <p className="soft">{say('sweeps_intro')}</p>}
          <ul className="stack-small">
            {jobLine.sweeps.map((sweep) => (
              <li key={sweep.id}>
                <div className="line-item-head">
                  <SweepWords sweep={sweep} />
                  <Button
                    kind="bare"
                    iconOnly
                    icon={<Icon name="remove" />}
                    disabled={disabled}
                    onClick={() => store.dispatch(removeSweep, { lineId: jobLine.id, sweepId: sweep.id })}
                  >
                    {say('do_remove_sweep_named', { name: sweep.name })}
                  </Button>
                </div>
                <SpacingFields
                  sweep={sweep}
                  disabled={disabled}
                  onChange={(layout) =>
                    store.dispatch(changeSpacing, { lineId: jobLine.id, sweepId: sweep.id, layout })
                  }
                  onDone={onDone}
                />
              </li>
            ))}
          </ul>
        </>
      )}
      <OpenButtons target={{ kind: 'sweep', lineId: jobLine.id }} />
    </Panel>
  )
}

function SweepWords({ sweep: { name, clips } }: { readonly sweep: JobSweep }) {
  const { say } = useSay()
  const points = clips.map(({ row }) => row.point)
  if (points.length === 0) return <span>{say('label_sweep_empty', { name })}</span>
  const first = points.reduce((low, point) => Math.min(low, point))
  const last = points.reduce((high, point) => Math.max(high, point))
  return <span>{say('label_sweep_line', { name, clips: clips.length, first, last })}</span>
}

interface SpacingFieldsProps {
  readonly sweep: JobSweep
  readonly disabled: boolean
  readonly onChange: (layout: NumberedLayout) => void
  readonly onDone: () => void
}

/** The spacing that points were placed by, so that a wrong one can be mended. Nothing where a tape placed them. */
function SpacingFields({ sweep, disabled, onChange, onDone }: SpacingFieldsProps) {
  const { say } = useSay()
  const layout = evenLayout(sweep.clips.map(({ row }) => row))
  if (layout === null) return null
  const { startM, spacingM, firstPoint, lastPoint } = layout
  const gaps = lastPoint - firstPoint
  return (
    <div className="line-pair">
      <NumberField
        label={say('label_spacing')}
        value={spacingM}
        unit="m"
        least={0.01}
        most={Math.min(1000, (ALONG_LIMITS.most - startM) / gaps)}
        hint={say('spacing_hint')}
        disabled={disabled}
        onChange={(next) => next !== null && onChange({ startM, spacingM: next })}
        onDone={onDone}
      />
      <NumberField
        label={say('label_start', { point: firstPoint })}
        value={startM}
        unit="m"
        least={ALONG_LIMITS.least}
        most={ALONG_LIMITS.most - gaps * spacingM}
        disabled={disabled}
        onChange={(next) => next !== null && onChange({ startM: next, spacingM })}
        onDone={onDone}
      />
    </div>
  )
}
