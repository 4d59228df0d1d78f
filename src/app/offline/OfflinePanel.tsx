import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Icon } from '../look/widgets/Icon'
import { Panel } from '../look/widgets/Panel'
import { Progress } from '../look/widgets/Progress'
import type { OfflineState } from './offlineState'

/** Whether the page works without a signal, and the way to the home screen. */
export function OfflinePanel() {
  const { say } = useSay()
  const { homeScreen } = useApp()
  const offline = useAppState((state) => state.session.offline)
  const canInstall = useAppState((state) => state.session.canInstall)
  if (offline.stage === 'asking' || (offline.stage === 'unable' && offline.why === 'not_secure')) return null
  return (
    <Panel heading={say('heading_offline')}>
      <OfflineWords offline={offline} />
      {canInstall && (
        <>
          <p>{say('home_screen_how')}</p>
          <Button icon={<Icon name="add" />} onClick={() => void homeScreen.ask()}>
            {say('do_home_screen')}
          </Button>
        </>
      )}
    </Panel>
  )
}

const WORDS_OF = {
  not_fetched: 'offline_not_fetched',
  other_content: 'offline_other_content',
  full: 'offline_full',
  refused: 'offline_refused',
} as const

function OfflineWords({ offline }: { readonly offline: OfflineState }) {
  const { say, sayKeyed } = useSay()
  const { offlineKeeper } = useApp()
  if (offline.stage === 'keeping') {
    return <Progress words={say('offline_keeping')} done={offline.done} total={offline.total} />
  }
  if (offline.stage === 'failed') {
    return (
      <>
        <p role="status">{sayKeyed({ key: WORDS_OF[offline.why], values: { file: offline.file } })}</p>
        <Button onClick={() => void offlineKeeper.start()}>{say('do_try_again')}</Button>
      </>
    )
  }
  const key = offline.stage === 'kept' ? 'offline_kept' : 'offline_not_known'
  return <p role="status">{sayKeyed({ key, values: {} })}</p>
}
