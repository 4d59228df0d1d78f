import { useState } from 'react'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { saveFile } from '../../saveFile'

interface HandOverProps {
  readonly name: string
  readonly content: Blob
  readonly mediaType: string
  readonly isOpinions?: boolean
}

/** A file on its way to somebody: through the system's share sheet where it takes such files, and saved anywhere. */
export function HandOver({ name, content, mediaType, isOpinions = false }: HandOverProps) {
  const { say } = useSay()
  const [isRefused, setRefused] = useState(false)
  const data = { files: [new File([content], name, { type: mediaType })], title: name }
  const canShare = !isRefused && typeof navigator.canShare === 'function' && navigator.canShare(data)
  const share = async () => {
    try {
      await navigator.share(data)
    } catch (error) {
      // Whoever closes the sheet has not refused it.
      if (!(error instanceof DOMException && error.name === 'AbortError')) setRefused(true)
    }
  }
  return (
    <div className="row">
      {canShare && (
        <Button kind="main" icon={<Icon name="next" />} onClick={() => void share()}>
          {say(isOpinions ? 'do_share_opinions' : 'do_share')}
        </Button>
      )}
      <Button icon={<Icon name="save" />} onClick={() => saveFile(name, content, mediaType)}>
        {say(isOpinions ? 'do_save_opinions' : 'do_save_job_file')}
      </Button>
      {isRefused && <p role="status">{say('share_refused')}</p>}
    </div>
  )
}
