import { type DragEvent, type ReactNode, useState } from 'react'
import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { droppedEntries } from './fromDrop'
import type { Target } from './opener'
import './DropArea.css'

export interface DropAreaProps {
  readonly target: Target
  readonly children: ReactNode
}

/** Takes folders, zips and clips that are dropped anywhere on a screen. For the hand without a mouse there are pickers. */
export function DropArea({ target, children }: DropAreaProps) {
  const { say } = useSay()
  const { opener } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const [isOver, setOver] = useState(false)
  const over = (event: DragEvent) => {
    if (readOnly || !event.dataTransfer.types.includes('Files')) return
    event.preventDefault()
    setOver(true)
  }
  const drop = (event: DragEvent) => {
    event.preventDefault()
    setOver(false)
    const entries = droppedEntries(event.dataTransfer)
    if (!readOnly && entries.length > 0) void opener.dropped(entries, target)
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a place to drop things on is no control
    <div className="drop-area" onDragOver={over} onDragLeave={() => setOver(false)} onDrop={drop}>
      {children}
      {isOver && <p className="drop-area-here">{say('label_drop_here')}</p>}
    </div>
  )
}
