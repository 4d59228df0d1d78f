import type { JobLine } from '../../../../shared/job/job'
import { type Mend, NO_MEND } from '../../../../shared/job/mend'
import { FoundPart } from '../../found/FoundPart'
import { CautionsPart } from '../../frame/CautionsPart'
import { PageNotices } from '../../frame/PageNotices'
import { useApp, useAppState } from '../../frame/useApp'
import { changeMend } from '../../store/actions/changeMend'
import { shownLine } from '../../store/selectors/shownLine'
import { CutPart } from './CutPart'
import { JointPart } from './JointPart'
import { StepsPart } from './StepsPart'
import { TimesPart } from './TimesPart'
import './MendScreen.css'

/** The repair: cut, parts with their proofs, steps, joint, times. */
export function MendScreen() {
  const line = useAppState(shownLine)
  if (line === null) return null
  return <MendOf key={line.id} line={line} />
}

function MendOf({ line }: { readonly line: JobLine }) {
  const { store } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const answer = useAppState((state) => state.session.answers[line.id]?.answer ?? null)
  const mend = line.mend ?? NO_MEND
  const onChange = (change: Partial<Mend>, typing?: string) => {
    store.dispatch(changeMend, { lineId: line.id, change, ...(typing !== undefined && { typing }) })
    if (typing === undefined) store.closeStep()
  }
  const part = { line, mend, disabled: readOnly || mend.closedS !== null, onChange }
  return (
    <>
      <PageNotices place="mend" />
      <CautionsPart step="mend" />
      <div className="mend">
        <div className="mend-column">
          <FoundPart line={line} answer={answer} place="mend" />
          <CutPart {...part} density={answer?.density ?? null} />
        </div>
        <div className="mend-column">
          <StepsPart {...part} />
          <JointPart {...part} />
          <TimesPart line={line} mend={mend} readOnly={readOnly} />
        </div>
      </div>
    </>
  )
}
