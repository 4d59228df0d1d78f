import { Button } from '../look/widgets/Button'
import { Notice } from '../look/widgets/Notice'
import { NewerTakenNotice } from '../offline/NewerTakenNotice'
import { dismissNotice } from '../store/actions/dismissNotice'
import type { NoticePlace } from '../store/state'
import { useApp, useAppState } from './useApp'
import { useSay } from './useSay'

/** What is to be told at a place. The page itself also tells of saving and of other tabs. */
export function PageNotices({ place }: { readonly place: NoticePlace }) {
  const { sayKeyed } = useSay()
  const { store } = useApp()
  const notices = useAppState((state) => state.session.notices)
  return (
    <>
      {place === 'page' && <ReadOnlyNotice />}
      {place === 'page' && <HandingOverNotice />}
      {place === 'page' && <SaveNotice />}
      {place === 'page' && <NewerTakenNotice />}
      {notices
        .filter((notice) => notice.place === place)
        .map(({ id, severity, words }) => (
          <Notice key={id} severity={severity} onDismiss={() => store.dispatch(dismissNotice, id)}>
            <p>{sayKeyed(words)}</p>
          </Notice>
        ))}
    </>
  )
}

function ReadOnlyNotice() {
  const { say } = useSay()
  const { takeOver } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  if (!readOnly) return null
  return (
    <Notice severity="odd" actions={<Button onClick={() => void takeOver()}>{say('do_work_here')}</Button>}>
      <p>{say('page_read_only')}</p>
    </Notice>
  )
}

function HandingOverNotice() {
  const { say } = useSay()
  const handingOver = useAppState((state) => state.session.handingOver)
  return handingOver && <Notice severity="odd">{say('page_handing_over')}</Notice>
}

function SaveNotice() {
  const { say, sayKeyed } = useSay()
  const { saver } = useApp()
  const saving = useAppState((state) => state.session.saving)
  if (saving.state !== 'failed') return null
  const key = saving.full ? 'page_save_full' : 'page_save_failed'
  return (
    <Notice severity="wrong" actions={<Button onClick={() => void saver.flush()}>{say('do_try_again')}</Button>}>
      <p>{sayKeyed({ key, values: {} })}</p>
    </Notice>
  )
}
