import { LINE_DASHES } from '../charts/lineDashes'
import { useSay } from '../frame/useSay'
import type { ShownClips } from './panelClips'
import { LINE_ROLES } from './spectrumLines'
import { clipWords } from './spectrumReading'

/** Which line is which. */
export function SpectrumKey({ clips }: { readonly clips: ShownClips }) {
  const { say } = useSay()
  return (
    <ul className="spectrum-key">
      {LINE_ROLES.map((role) => {
        const clip = clips[role]
        if (clip === null) return null
        return (
          <li key={role} className="spectrum-key-entry">
            <svg width="40" height="12" aria-hidden="true" className={`spectrum-stroke spectrum-stroke-${role}`}>
              <path d="M1 6h38" strokeDasharray={LINE_DASHES[role].join(' ') || undefined} />
            </svg>
            {clipWords(clip, say)}
          </li>
        )
      })}
    </ul>
  )
}
