import { useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Notice } from '../look/widgets/Notice'

/** In a tab where the version was not taken: what it would fetch later may be gone. */
export function NewerTakenNotice() {
  const { say, sayKeyed } = useSay()
  const isTaken = useAppState((state) => state.session.newerVersion === 'taken')
  if (!isTaken) return null
  return (
    <Notice severity="odd" actions={<Button onClick={() => location.reload()}>{say('do_reload')}</Button>}>
      <p>{sayKeyed({ key: 'newer_taken', values: {} })}</p>
    </Notice>
  )
}
