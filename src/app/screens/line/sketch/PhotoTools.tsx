import { useRef, useState } from 'react'
import { lineCorners } from '../../../../../shared/line/lineCorners'
import { useApp } from '../../../frame/useApp'
import { Button } from '../../../look/widgets/Button'
import { Icon } from '../../../look/widgets/Icon'
import { Notice } from '../../../look/widgets/Notice'
import { NumberField } from '../../../look/widgets/NumberField'
import { keepPhoto } from '../../../storage/keepPhoto'
import { putPhoto } from '../../../store/actions/putPhoto'
import { scalePhoto } from '../../../store/actions/scalePhoto'
import { tell, untell } from '../../../store/notices'
import type { ModeContext } from './padMode'

/** A photo chosen, scaled, taken away. */
export function PhotoTools({ of }: { readonly of: ModeContext }) {
  const { jobLine, store, say, disabled } = of
  const { database } = useApp()
  const input = useRef<HTMLInputElement>(null)
  const photo = jobLine.site?.photo ?? null
  const take = async (file: File) => {
    store.update((state) => untell(state, 'line'))
    const kept = await keepPhoto(database, file)
    if ('trouble' in kept) return store.update((state) => tell(state, 'line', 'wrong', kept.trouble))
    store.dispatch(putPhoto, { lineId: jobLine.id, photo: kept.photo })
    of.change({ scale: [] })
  }
  return (
    <>
      {photo && !photo.scaleTold && (
        <Notice severity="odd">
          <p>{say('pad_photo_unscaled')}</p>
        </Notice>
      )}
      {photo && of.choices.scale.length === 2 && <ScaleFields of={of} />}
      <div className="row">
        <Button
          kind={photo === null ? 'main' : 'quiet'}
          icon={<Icon name="open" />}
          disabled={disabled}
          onClick={() => input.current?.click()}
        >
          {say(photo === null ? 'do_choose_photo' : 'do_choose_other_photo')}
        </Button>
        {photo && (
          <Button
            icon={<Icon name="remove" />}
            disabled={disabled}
            onClick={() => store.dispatch(putPhoto, { lineId: jobLine.id, photo: null })}
          >
            {say('do_remove_photo')}
          </Button>
        )}
      </div>
      <input
        ref={input}
        type="file"
        accept="image/*"
        hidden
        data-picker="photo"
        onChange={(event) => {
          const file = event.target.files?.[0]
          event.target.value = ''
          if (file) void take(file)
        }}
      />
      <p className="soft">{say('pad_photo_slant')}</p>
    </>
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
