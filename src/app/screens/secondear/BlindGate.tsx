import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { goTo } from '../../route'
import { ShowAnswer } from './ShowAnswer'

/** Stands before every screen that shows an answer somebody is to judge blind. */
export function BlindGate() {
  const { say } = useSay()
  const jobId = useAppState((state) => state.job?.id ?? null)
  const lineId = useAppState((state) => state.session.lineId)
  if (jobId === null || lineId === null) return null
  return (
    <Panel heading={say('heading_blind')}>
      <p>{say('blind_gate')}</p>
      <Button kind="main" onClick={() => goTo({ screen: 'secondear', jobId, lineId })}>
        {say('do_listen_blind')}
      </Button>
      <ShowAnswer jobId={jobId} />
    </Panel>
  )
}
