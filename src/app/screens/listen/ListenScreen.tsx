import { useEffect, useState } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import { CautionsPart } from '../../frame/CautionsPart'
import { PageNotices } from '../../frame/PageNotices'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { RecorderClipsPart } from '../../join/RecorderClipsPart'
import { Button } from '../../look/widgets/Button'
import { Notice } from '../../look/widgets/Notice'
import { OpenButtons } from '../../open/OpenButtons'
import { OpeningPanel } from '../../open/OpeningPanel'
import { canListen } from '../../record/microphone'
import { changeListen } from '../../store/actions/changeListen'
import { shownLine } from '../../store/selectors/shownLine'
import { AskedAgainPart } from './AskedAgainPart'
import { ClipsPart } from './ClipsPart'
import { HookUp } from './HookUp'
import { HowPart } from './HowPart'
import { LastClipPart } from './LastClipPart'
import { LivePart } from './LivePart'
import { MorePointPart } from './MorePointPart'
import { NextClipPart } from './NextClipPart'
import { PointsPart } from './PointsPart'
import { RecordAction } from './RecordAction'
import { RecorderNotices } from './RecorderNotices'
import { useRecorder } from './useRecorder'
import './ListenScreen.css'

/** Recording at the points. */
export function ListenScreen() {
  const line = useAppState(shownLine)
  if (line === null) return null
  return (
    <>
      <PageNotices place="listen" />
      <OpeningPanel />
      <CautionsPart step="sound" />
      {canListen() ? <ListenOf key={line.id} line={line} /> : <ImportOnly line={line} />}
    </>
  )
}

/** A page without the right to a microphone takes what a recorder recorded. */
function ImportOnly({ line }: { readonly line: JobLine }) {
  const { sayKeyed } = useSay()
  return (
    <Notice severity="wrong" actions={<OpenButtons target={{ kind: 'sweep', lineId: line.id }} isMain />}>
      <p>{sayKeyed({ key: 'mic_not_secure', values: {} })}</p>
    </Notice>
  )
}

function ListenOf({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const { store } = useApp()
  const recorder = useRecorder()
  const hookedUp = useAppState((state) => state.device.listen.hookedUp)
  const [isHooking, setHooking] = useState(!hookedUp)
  useEffect(() => () => recorder.leave(), [recorder])
  if (isHooking) {
    const done = () => {
      store.dispatch(changeListen, { hookedUp: true })
      setHooking(false)
    }
    return <HookUp onDone={done} />
  }
  return (
    <div className="listen">
      <div className="listen-column">
        <RecorderNotices />
        <NextClipPart line={line} />
        <LivePart />
        <LastClipPart />
        <RecordAction />
      </div>
      <div className="listen-column">
        <AskedAgainPart line={line} />
        <PointsPart line={line} />
        <MorePointPart line={line} />
        <HowPart line={line} aside={<Button onClick={() => setHooking(true)}>{say('do_hook_up')}</Button>} />
        <ClipsPart line={line} />
        <RecorderClipsPart lineId={line.id} />
      </div>
    </div>
  )
}
