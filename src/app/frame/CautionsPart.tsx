import { CAUTIONS, type CautionStep } from '../../../shared/job/cautions'
import { Button } from '../look/widgets/Button'
import { Panel } from '../look/widgets/Panel'
import { hideCautions } from '../store/actions/hideCautions'
import { useApp, useAppState } from './useApp'
import { useSay } from './useSay'
import './CautionsPart.css'

/** What can hurt at this step, until it was read; the report has it either way. */
export function CautionsPart({ step }: { readonly step: CautionStep }) {
  const { say } = useSay()
  const { store } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const hidden = useAppState((state) => state.job?.hiddenCautions?.includes(step) === true)
  const put = (next: boolean) => store.dispatch(hideCautions, { step, hidden: next })
  if (hidden) {
    return (
      <div className="row">
        <Button kind="quiet" disabled={readOnly} onClick={() => put(false)}>
          {say('do_show_cautions')}
        </Button>
      </div>
    )
  }
  return (
    <Panel heading={say(step === 'dig' ? 'heading_before_digging' : 'heading_cautions')}>
      <ul className="cautions">
        {CAUTIONS[step].map((key) => (
          <li key={key}>{say(key)}</li>
        ))}
      </ul>
      <Button disabled={readOnly} onClick={() => put(true)}>
        {say('do_hide_cautions')}
      </Button>
    </Panel>
  )
}
