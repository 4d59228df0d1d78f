import { type ReactNode, useDeferredValue } from 'react'
import { confirmationOf } from '../../../../shared/job/confirmationOf'
import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { ExportButton } from '../../export/ExportButton'
import { FoundPart } from '../../found/FoundPart'
import { PageNotices } from '../../frame/PageNotices'
import { useApp, useAppState } from '../../frame/useApp'
import { useLater } from '../../frame/useLater'
import { useSay } from '../../frame/useSay'
import { OpeningPanel } from '../../open/OpeningPanel'
import { choosePoint } from '../../store/actions/choosePoint'
import { noteExamined } from '../../store/actions/noteExamined'
import { answerOf } from '../../store/selectors/answerOf'
import { shownLine } from '../../store/selectors/shownLine'
import { ClipsPart } from './ClipsPart'
import { ConfirmPanel } from './ConfirmPanel'
import { NextSteps } from './NextSteps'
import { OpenPart } from './open/OpenPart'
import { PlaceEmpty } from './PlaceEmpty'
import { PlaceSketch } from './PlaceSketch'
import { PointPanel } from './PointPanel'
import { RankedPoints } from './RankedPoints'
import { Reasons } from './Reasons'
import { SaveAnswer } from './SaveAnswer'
import { SignsPart } from './SignsPart'
import { VerdictPart } from './VerdictPart'
import { WorkingPart } from './WorkingPart'
import './PlaceScreen.css'

/** Where the leak is, how sure that is, and why. */
export function PlaceScreen() {
  const line = useAppState(shownLine)
  if (line === null) return null
  const isEmpty = line.sweeps.every((sweep) => sweep.clips.length === 0)
  return (
    <>
      <PageNotices place="place" />
      <OpeningPanel />
      {isEmpty ? <PlaceEmpty line={line} /> : <PlaceOf key={line.id} line={line} />}
    </>
  )
}

/** One line's place: another line begins anew, so that no answer is ever shown with a line it is not of. */
function PlaceOf({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const latest = useAppState((state) => state.session.answers[line.id] ?? null)
  const kept = useDeferredValue(latest, null) // all of it at once would hold the page up
  return (
    <>
      {line.keptAnswer && <p className="soft">{say('place_answer_kept')}</p>}
      <WorkingPart line={line} />
      {kept !== null && kept.detector !== null && (
        <p className="soft">{say('place_detector', { name: kept.detector.card.name })}</p>
      )}
      {kept !== null && <Answered line={line} answer={kept.answer} />}
    </>
  )
}

function Answered({ line, answer }: { readonly line: JobLine; readonly answer: LocateAnswer }) {
  const { store } = useApp()
  const isCurrent = useAppState((state) => answerOf(state, line)?.isCurrent === true)
  const chosenPoint = useAppState((state) => state.session.chosenPoint)
  const choose = (point: number | null) => store.dispatch(choosePoint, point)
  const note = (point: number, how: 'looked' | 'played') =>
    store.dispatch(noteExamined, { lineId: line.id, point, how })
  const isSaid = confirmationOf(line, answer) !== null || (line.found ?? []).length > 0
  const chosen = answer.points.find(({ point }) => point === chosenPoint)
  return (
    <div className="place" data-old={!isCurrent}>
      <div className="place-column">
        <VerdictPart line={line} answer={answer} chosenPoint={chosenPoint} onChoose={choose} />
        <Later>
          <Later>
            <PlaceSketch line={line} answer={answer} chosenPoint={chosenPoint} onChoose={choose} />
          </Later>
        </Later>
        {chosen && (
          <PointPanel
            key={chosen.point}
            line={line}
            answer={answer}
            point={chosen}
            onClose={() => choose(null)}
            onSpectrumSeen={(point) => note(point, 'looked')}
            onPlayed={({ point }) => note(point, 'played')}
          />
        )}
        <SignsPart line={line} answer={answer} />
        <ConfirmPanel line={line} answer={answer} />
        {isSaid && <FoundPart line={line} answer={answer} place="place" />}
      </div>
      <div className="place-column">
        <Reasons answer={answer} />
        <Later>
          <RankedPoints answer={answer} chosenPoint={chosenPoint} onChoose={choose} />
          <Later>
            <NextSteps line={line} answer={answer} />
            <OpenPart line={line} answer={answer} />
            <ClipsPart line={line} answer={answer} />
          </Later>
        </Later>
        <div className="row">
          <SaveAnswer line={line} answer={answer} />
          <ExportButton line={line} />
        </div>
      </div>
    </div>
  )
}

/** The verdict comes first; what takes longer to draw follows it. */
function Later({ children }: { readonly children: ReactNode }) {
  return useLater() && children
}
