import { Button } from '../look/widgets/Button'
import { Icon } from '../look/widgets/Icon'
import { SelectField } from '../look/widgets/SelectField'
import { goTo } from '../route'
import type { ScreenName } from '../screens/screenNames'
import { SCREENS } from '../screens/screens'
import { SavingNote } from './SavingNote'
import { useApp, useAppState } from './useApp'
import { useSay } from './useSay'
import './Head.css'

/** Which job and line this is, and the way back from the last change. */
export function Head({ screen }: { readonly screen: ScreenName }) {
  const { say } = useSay()
  const job = useAppState((state) => state.job)
  const isOfJob = SCREENS[screen].needsJob
  if (!isOfJob || job === null) {
    return (
      <header className="head">
        <h1 className="head-title">
          {screen === 'jobs' && <span className="head-app">{say('label_app')}</span>}
          <span className={screen === 'jobs' ? 'head-screen' : undefined}>{say(SCREENS[screen].words)}</span>
        </h1>
      </header>
    )
  }
  return (
    <header className="head">
      <div className="head-title">
        <h1 className="head-job">
          <span className="unseen">{`${say(SCREENS[screen].words)}: `}</span>
          {job.name}
        </h1>
        <SavingNote />
      </div>
      <Steps />
      {job.lines.length > 1 && <LineChoice screen={screen} />}
    </header>
  )
}

function Steps() {
  const { say } = useSay()
  const { store } = useApp()
  const undo = useAppState((state) => state.undo.at(-1)?.words)
  const redo = useAppState((state) => state.redo.at(-1)?.words)
  const readOnly = useAppState((state) => state.session.readOnly)
  return (
    <div className="head-steps">
      <Button
        kind="bare"
        iconOnly
        icon={<Icon name="undo" />}
        disabled={undo === undefined || readOnly}
        title={undo && say('label_undo_what', { what: say(undo as 'do_undo') })}
        onClick={store.undo}
      >
        {say('do_undo')}
      </Button>
      <Button
        kind="bare"
        iconOnly
        icon={<Icon name="redo" />}
        disabled={redo === undefined || readOnly}
        title={redo && say('label_redo_what', { what: say(redo as 'do_redo') })}
        onClick={store.redo}
      >
        {say('do_redo')}
      </Button>
    </div>
  )
}

function LineChoice({ screen }: { readonly screen: ScreenName }) {
  const { say } = useSay()
  const job = useAppState((state) => state.job)
  const lineId = useAppState((state) => state.session.lineId)
  if (job === null || lineId === null) return null
  return (
    <div className="head-line">
      <SelectField
        label={say('label_which_line')}
        labelUnseen
        value={lineId}
        options={job.lines.map(({ id, name }) => ({ value: id, words: name }))}
        onChange={(id) => goTo({ screen, jobId: job.id, lineId: id })}
      />
    </div>
  )
}
