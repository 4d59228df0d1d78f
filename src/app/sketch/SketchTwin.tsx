import { useId, useState } from 'react'
import type { DrawCommand } from '../../../shared/sketch/drawList'
import { twinEntries } from '../../../shared/sketch/twinEntries'
import { useSay } from '../frame/useSay'
import { Icon } from '../look/widgets/Icon'

export interface SketchTwinProps {
  readonly commands: readonly DrawCommand[]
  readonly chosenPoint: number | null
  readonly onChoose: (point: number) => void
}

/** Everything the sketch shows, in words. Closed, it can still be read out; open, its points can be chosen as well. */
export function SketchTwin({ commands, chosenPoint, onChoose }: SketchTwinProps) {
  const { say, sayKeyed } = useSay()
  const [isOpen, setIsOpen] = useState(false)
  const id = useId()
  return (
    <div className="sketch-twin">
      <button
        type="button"
        className="sketch-twin-toggle"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setIsOpen(!isOpen)}
      >
        <Icon name="next" />
        {say('label_sketch_list')}
      </button>
      <ul id={id} className={isOpen ? 'sketch-twin-list' : 'unseen'} aria-label={say('label_sketch_list')}>
        {twinEntries(commands).map(({ id: entry, label, point }) => (
          <li key={entry}>
            {isOpen && point !== null ? (
              <button
                type="button"
                className="sketch-twin-point"
                aria-pressed={point === chosenPoint}
                onClick={() => onChoose(point)}
              >
                {sayKeyed(label)}
              </button>
            ) : (
              asSentence(sayKeyed(label))
            )}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** The tape continues a sentence elsewhere and stands alone here. */
function asSentence(text: string): string {
  const begun = text.charAt(0).toUpperCase() + text.slice(1)
  return begun.endsWith('.') ? begun : `${begun}.`
}
