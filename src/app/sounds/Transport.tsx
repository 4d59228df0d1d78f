import { useRef } from 'react'
import { ringStep } from '../../../shared/listen/ringStep'
import { formatNumber } from '../../../shared/words/formatQuantity'
import type { Listening, ListeningState } from '../ears/listening'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { ListenIcon } from './ListenIcon'
import type { PanelClip } from './panelClips'
import { clipWords } from './spectrumReading'
import { usePosition } from './useListening'
import './Transport.css'

interface TransportProps {
  /** Nothing is said of rings. */
  readonly isBlind: boolean
  readonly chosen: PanelClip
  readonly listening: Listening<PanelClip>
  readonly state: ListeningState
}

/** Play, pause, from ring to ring: stays in reach while the pictures are looked at. */
export function Transport({ chosen, listening, state, isBlind }: TransportProps) {
  const { say } = useSay()
  const rings = chosen.evidence?.ringList ?? []
  const jump = (direction: 'next' | 'previous') => {
    const to = ringStep(rings, listening.positionS(), direction)
    if (to !== null) listening.seek(Math.max(0, to.timeS - LEAD_S))
  }
  return (
    <div className="transport">
      {!isBlind && (
        <Button
          kind="bare"
          icon={<ListenIcon name="ringPrevious" />}
          disabled={rings.length === 0}
          onClick={() => jump('previous')}
        >
          {say('do_ring_previous')}
        </Button>
      )}
      <Button
        kind="main"
        icon={<ListenIcon name={state.playing ? 'pause' : 'play'} />}
        onClick={() => listening.toggle()}
      >
        {state.playing ? say('do_pause') : say('do_play')}
      </Button>
      {!isBlind && (
        <Button
          kind="bare"
          icon={<ListenIcon name="ringNext" />}
          disabled={rings.length === 0}
          onClick={() => jump('next')}
        >
          {say('do_ring_next')}
        </Button>
      )}
      <TransportNote chosen={chosen} listening={listening} state={state} />
    </div>
  )
}

/** A ring is heard better with a moment before it, s. */
const LEAD_S = 0.03

function TransportNote({ chosen, listening, state }: Omit<TransportProps, 'isBlind'>) {
  const { say } = useSay()
  const time = useRef<HTMLSpanElement>(null)
  const whole = chosen.evidence === null ? null : formatNumber(chosen.evidence.durationS, 1)
  usePosition(listening, state.playing, (atS) => {
    const words = whole === null ? '' : say('label_time_of', { at: formatNumber(atS, 1), whole })
    if (time.current !== null && time.current.textContent !== words) time.current.textContent = words
  })
  const liftDb = listening.liftDb()
  return (
    <p className="transport-note">
      <span>{clipWords(chosen, say)}</span>
      <span ref={time} className="soft" />
      {liftDb >= 0.5 && <span className="soft">{say('label_lifted', { lift_db: liftDb })}</span>}
    </p>
  )
}
