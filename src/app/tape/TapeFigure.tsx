import type { Source } from '../../../shared/locate/answer'
import { useSay } from '../frame/useSay'

/** Where to put the tape: its length large, where it is laid from beside it. What is dug by. Feet may stand over inches. */
export function TapeFigure({ tape }: { readonly tape: Source['tape'] }) {
  const { say, sayKeyed } = useSay()
  const whole = sayKeyed(tape)
  const { distance_m } = tape.values
  const length = typeof distance_m === 'number' ? say('label_length', { m: distance_m }) : ''
  if (length === '' || !whole.startsWith(length)) return <span className="tape-length">{capital(whole)}</span>
  return (
    <>
      <span className="tape-length">{length.replace('ft\u00a0', 'ft ')}</span>
      <span className="tape-from">{whole.slice(length.length)}</span>
    </>
  )
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
