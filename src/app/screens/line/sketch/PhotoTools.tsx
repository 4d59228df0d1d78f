import { useState } from 'react'
import type { SitePhoto } from '../../../../../shared/job/site'
import { lineCorners } from '../../../../../shared/line/lineCorners'
import { Button } from '../../../look/widgets/Button'
import { Icon } from '../../../look/widgets/Icon'
import { Notice } from '../../../look/widgets/Notice'
import { NumberField } from '../../../look/widgets/NumberField'
import { PhotoButton } from '../../../look/widgets/PhotoButton'
import { putPhoto } from '../../../store/actions/putPhoto'
import { scalePhoto } from '../../../store/actions/scalePhoto'
import { turnPhoto } from '../../../store/actions/turnPhoto'
import type { ModeContext } from './padMode'

/** A photo chosen, scaled, taken away. */
export function PhotoTools({ of }: { readonly of: ModeContext }) {
  const { jobLine, store, say, disabled } = of
  const photo = jobLine.site?.photo ?? null
  const put = (changed: SitePhoto | null) => store.dispatch(putPhoto, { lineId: jobLine.id, photo: changed })
  return (
    <>
      {photo && !photo.scaleTold && (
        <Notice severity="odd">
          <p>{say('pad_photo_unscaled')}</p>
        </Notice>
      )}
      {photo && of.choices.scale.length === 2 && <ScaleFields of={of} />}
      <div className="row">
        <PhotoButton
          words={say(photo === null ? 'do_choose_photo' : 'do_choose_other_photo')}
          kind={photo === null ? 'main' : 'quiet'}
          disabled={disabled}
          picker="photo"
          place="line"
          onKept={(kept) => {
            put(kept)
            of.change({ scale: [] })
          }}
        />
        {photo && (
          <Button icon={<Icon name="remove" />} disabled={disabled} onClick={() => put(null)}>
            {say('do_remove_photo')}
          </Button>
        )}
      </div>
      {photo && <TurnFields of={of} photo={photo} />}
      <p className="soft">{say('pad_photo_slant')}</p>
    </>
  )
}

/** A photo that was taken from the other side is turned until it lies as the sketch does. */
function TurnFields({ of, photo }: { readonly of: ModeContext; readonly photo: SitePhoto }) {
  const { jobLine, store, say, disabled } = of
  const turned = photo.turnDeg ?? 0
  const turn = (turnDeg: number) => store.dispatch(turnPhoto, { lineId: jobLine.id, turnDeg })
  const quarter = (byDeg: number) => {
    turn(turned + byDeg)
    store.closeStep()
  }
  return (
    <div className="stack">
      <NumberField
        label={say('label_photo_turn')}
        value={turned}
        unit={say('label_degrees')}
        least={-180}
        most={180}
        hint={say('photo_turn_hint')}
        disabled={disabled}
        onChange={(turnDeg) => turn(turnDeg!)}
        onDone={store.closeStep}
      />
      <div className="row">
        <Button icon={<Icon name="undo" />} disabled={disabled} onClick={() => quarter(-90)}>
          {say('do_photo_left')}
        </Button>
        <Button icon={<Icon name="redo" />} disabled={disabled} onClick={() => quarter(90)}>
          {say('do_photo_right')}
        </Button>
      </div>
    </div>
  )
}

function ScaleFields({ of }: { readonly of: ModeContext }) {
  const { jobLine, store, say, disabled, choices, change } = of
  const [distanceM, setDistanceM] = useState<number | null>(null)
  const [one, other] = choices.scale
  const drawnM = Math.hypot(one!.xM - other!.xM, one!.yM - other!.yM)
  const set = (alsoLine: boolean) => {
    const factor = distanceM! / drawnM
    store.dispatch(scalePhoto, { lineId: jobLine.id, factor, about: one!, alsoLine })
    change({ scale: [] })
  }
  const cannot = disabled || distanceM === null || drawnM === 0
  return (
    <div className="sketchpad-chosen">
      <NumberField
        label={say('label_pad_scale')}
        value={distanceM}
        unit="m"
        least={0.01}
        most={10_000}
        disabled={disabled}
        onChange={setDistanceM}
        onWrong={() => setDistanceM(null)}
      />
      <div className="row">
        <Button kind="main" disabled={cannot} onClick={() => set(false)}>
          {say('do_scale_photo')}
        </Button>
        {lineCorners(jobLine.line).length > 0 && (
          <Button disabled={cannot} onClick={() => set(true)}>
            {say('do_scale_both')}
          </Button>
        )}
      </div>
    </div>
  )
}
