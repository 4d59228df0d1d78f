import type { KeptPhoto } from '../../../shared/job/found'
import { useSay } from '../frame/useSay'
import { usePhotoUrl } from '../sketch/pad/usePhotoUrl'

/** A photo of what was found; words where it is not on this device. */
export function FoundPhoto({ photo }: { readonly photo: KeptPhoto }) {
  const { say } = useSay()
  const url = usePhotoUrl(photo)
  if (url === null) return null
  if (url === 'missing') return <p className="soft">{say('photo_missing')}</p>
  return <img className="found-photo" src={url} alt={say('label_found_photo')} />
}
