import { useAppState } from './useApp'
import { useSay } from './useSay'

/** Small and calm while all is well; trouble has a notice of its own. */
export function SavingNote() {
  const { say } = useSay()
  const saving = useAppState((state) => state.session.saving.state)
  const readOnly = useAppState((state) => state.session.readOnly)
  const hasJob = useAppState((state) => state.job !== null)
  if (readOnly) return <span className="soft">{say('label_read_only')}</span>
  if (!hasJob || saving === 'failed') return null
  return <span className="soft">{saving === 'saved' ? say('label_saved') : say('label_saving')}</span>
}
