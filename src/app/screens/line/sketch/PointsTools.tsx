import { useState } from 'react'
import { type PointOnLine, pointsOnLine } from '../../../../../shared/sketch/pointsOnLine'
import { suggestedSpacing } from '../../../../../shared/sketch/suggestedSpacing'
import { useAppState } from '../../../frame/useApp'
import { Button } from '../../../look/widgets/Button'
import { Icon } from '../../../look/widgets/Icon'
import { NumberField } from '../../../look/widgets/NumberField'
import { layPoints } from '../../../store/actions/layPoints'
import { movePoint } from '../../../store/actions/movePoint'
import { renumberPoints } from '../../../store/actions/renumberPoints'
import { ALONG_LIMITS } from '../linePart'
import { layAll, layClose } from './layings'
import type { ModeContext } from './padMode'
import { pointLabel, pointsMode, putPoint } from './pointsMode'

/** Points at a spacing, suggested from the depth; the chosen one; numbers anew. */
export function PointsTools({ of }: { readonly of: ModeContext }) {
  const { jobLine, say, store, disabled, chosenId } = of
  const { line } = jobLine
  const { coarseM, fineM, depthM, depthTold } = suggestedSpacing(line)
  const [typedM, setTypedM] = useState<number | null>(null)
  const answer = useAppState((state) => state.session.answers[jobLine.id]?.answer ?? null)
  const best = answer?.sources[0] ?? null
  const points = pointsOnLine(jobLine)
  const chosenAt = points.findIndex(({ point }) => `peg-${point}` === chosenId)
  const hasClips = points.some(({ clipCount }) => clipCount > 0)
  const lineId = jobLine.id
  const lay = (laid: Parameters<typeof layPoints.perform>[1]['points'] | null) =>
    laid && store.dispatch(layPoints, { lineId, points: laid })
  return (
    <>
      {chosenAt >= 0 && <PointFields key={chosenId} of={of} point={points[chosenAt]!} next={points[chosenAt + 1]} />}
      <p>{say('pad_spacing', { coarse_m: coarseM, fine_m: fineM, depth_m: depthM })}</p>
      {!depthTold && <p className="soft">{say('pad_depth_assumed')}</p>}
      <NumberField
        label={say('label_pad_spacing')}
        value={typedM ?? coarseM}
        unit="m"
        least={0.05}
        most={1000}
        disabled={disabled}
        onChange={setTypedM}
      />
      <div className="row">
        <Button
          kind={points.length === 0 ? 'main' : 'quiet'}
          disabled={disabled || line.lengthM === null}
          onClick={() => lay(layAll(jobLine, typedM ?? coarseM))}
        >
          {say('do_lay_points')}
        </Button>
        {best && (
          <Button disabled={disabled} onClick={() => lay(layClose(jobLine, best.windowM, typedM ?? fineM))}>
            {say('do_lay_close', { spacing_m: typedM ?? fineM })}
          </Button>
        )}
        <Button
          disabled={disabled || hasClips || points.length === 0}
          onClick={() => {
            store.dispatch(renumberPoints, { lineId })
            of.choose(null)
          }}
        >
          {say('do_renumber_points')}
        </Button>
      </div>
      {hasClips && <p className="soft">{say('pad_numbers_stay')}</p>}
    </>
  )
}

interface PointFieldsProps {
  readonly of: ModeContext
  readonly point: PointOnLine
  readonly next: PointOnLine | undefined
}

function PointFields({ of, point, next }: PointFieldsProps) {
  const { jobLine, say, store, disabled } = of
  const { alongM, offsetM } = point
  const put = (changed: { alongM?: number; offsetM?: number }) =>
    store.dispatch(movePoint, { lineId: jobLine.id, point: { point: point.point, alongM, offsetM, ...changed } })
  const common = { unit: 'm', disabled, onDone: store.closeStep, ...ALONG_LIMITS } as const
  return (
    <div className="sketchpad-chosen">
      <h3>{pointLabel(of, point)}</h3>
      <div className="line-pair">
        <NumberField
          label={say('label_pad_along')}
          value={alongM}
          {...common}
          onChange={(value) => put({ alongM: value! })}
        />
        <NumberField
          label={say('label_pad_beside')}
          value={offsetM}
          {...common}
          hint={say('pad_beside_hint')}
          onChange={(value) => put({ offsetM: value! })}
        />
      </div>
      <div className="row">
        {next && (
          <Button
            icon={<Icon name="add" />}
            disabled={disabled}
            onClick={() => putPoint(of, (alongM + next.alongM) / 2)}
          >
            {say('do_add_between', { point: point.point, next: next.point })}
          </Button>
        )}
        <Button
          icon={<Icon name="remove" />}
          disabled={disabled || point.clipCount > 0}
          onClick={() => pointsMode(of).remove(`peg-${point.point}`)}
        >
          {say('do_remove_chosen')}
        </Button>
      </div>
      {point.clipCount > 0 && <p className="soft">{say('pad_point_heard', { clips: point.clipCount })}</p>}
    </div>
  )
}
