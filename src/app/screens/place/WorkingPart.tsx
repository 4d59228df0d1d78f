import type { JobLine } from '../../../../shared/job/job'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Notice } from '../../look/widgets/Notice'
import { Panel } from '../../look/widgets/Panel'
import { Progress } from '../../look/widgets/Progress'

/** How far the working out is, with a way to stop it and to go on. Nothing once the answer is there. */
export function WorkingPart({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const { keeper } = useApp()
  const working = useAppState((state) => state.session.working)
  const isHalted = useAppState((state) => state.session.halted.includes(line.id))
  const hasAnswer = useAppState((state) => state.session.answers[line.id] !== undefined)
  if (isHalted) {
    return (
      <Notice severity="odd" actions={<Button onClick={() => keeper.goOn()}>{say('do_go_on')}</Button>}>
        <p>{say('place_halted')}</p>
      </Notice>
    )
  }
  if (working?.lineId !== line.id) return null
  if (hasAnswer && working.stage === 'locating') {
    return (
      <p className="unseen" role="status">
        {say('place_old')}
      </p>
    )
  }
  const words = working.stage === 'listening' ? say('place_listening') : say('place_locating')
  return (
    <Panel heading={say('label_place')} headingUnseen>
      <Progress words={words} done={working.done} total={working.total} onCancel={() => keeper.cancel()} />
    </Panel>
  )
}
