import { type ReactNode, useRef } from 'react'
import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Icon } from '../look/widgets/Icon'
import type { Target } from './opener'

export interface OpenButtonsProps {
  readonly target: Target
  /** The folder is the main action of its screen. */
  readonly isMain?: boolean
}

/** Pickers for a folder, and for loose clips or a zip. */
export function OpenButtons({ target, isMain = false }: OpenButtonsProps) {
  const { say } = useSay()
  const { opener } = useApp()
  const open = (files: File[]) => void opener.files(files, target)
  const words = WORDS_OF[target.kind]
  return (
    <div className="row">
      <Picker kind="folder" isMain={isMain} onPick={open}>
        {say(words.folder)}
      </Picker>
      <Picker kind="files" isMain={false} onPick={open}>
        {say(words.files)}
      </Picker>
    </div>
  )
}

const WORDS_OF = {
  job: { folder: 'do_open_folder', files: 'do_open_files' },
  line: { folder: 'do_add_line_folder', files: 'do_add_line_files' },
  sweep: { folder: 'do_add_sweep_folder', files: 'do_add_sweep_files' },
} as const

/** What a phone's picker offers; what is opened is told by its bytes. */
const ACCEPT = '.wav,.flac,.ogg,.oga,.opus,.mp3,.m4a,.aac,.zip,.csv,.json,audio/*'

interface PickerProps {
  readonly kind: 'folder' | 'files'
  readonly isMain: boolean
  readonly children: ReactNode
  readonly onPick: (files: File[]) => void
}

function Picker({ kind, isMain, children, onPick }: PickerProps) {
  const readOnly = useAppState((state) => state.session.readOnly)
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <Button
        kind={isMain ? 'main' : 'quiet'}
        icon={<Icon name={kind === 'folder' ? 'open' : 'add'} />}
        disabled={readOnly}
        onClick={() => input.current?.click()}
      >
        {children}
      </Button>
      <input
        ref={(element) => {
          input.current = element
          if (element !== null) element.webkitdirectory = kind === 'folder'
        }}
        type="file"
        hidden
        multiple
        data-picker={kind}
        accept={kind === 'files' ? ACCEPT : undefined}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])]
          event.target.value = ''
          if (files.length > 0) onPick(files)
        }}
      />
    </>
  )
}
