import { useRef } from 'react'
import type { SitePhoto } from '../../../../shared/job/site'
import { useApp } from '../../frame/useApp'
import { keepPhoto } from '../../storage/keepPhoto'
import { tell, untell } from '../../store/notices'
import type { NoticePlace } from '../../store/state'
import { Button, type ButtonProps } from './Button'
import { Icon } from './Icon'

export interface PhotoButtonProps {
  readonly words: string
  readonly kind?: ButtonProps['kind']
  readonly disabled: boolean
  /** Tells the inputs of a page apart. */
  readonly picker: string
  /** Where it is told when it is no picture, or there is no room. */
  readonly place: NoticePlace
  readonly onKept: (photo: SitePhoto) => void
}

/** Has a photo chosen, or taken by the phone's camera, and keeps it on this device. */
export function PhotoButton({ words, kind = 'quiet', disabled, picker, place, onKept }: PhotoButtonProps) {
  const { store, database } = useApp()
  const input = useRef<HTMLInputElement>(null)
  const take = async (file: File) => {
    store.update((state) => untell(state, place))
    const kept = await keepPhoto(database, file)
    if ('trouble' in kept) store.update((state) => tell(state, place, 'wrong', kept.trouble))
    else onKept(kept.photo)
  }
  return (
    <>
      <Button kind={kind} icon={<Icon name="open" />} disabled={disabled} onClick={() => input.current?.click()}>
        {words}
      </Button>
      <input
        ref={input}
        type="file"
        accept="image/*"
        hidden
        data-picker={picker}
        onChange={(event) => {
          const file = event.target.files?.[0]
          event.target.value = ''
          if (file) void take(file)
        }}
      />
    </>
  )
}
