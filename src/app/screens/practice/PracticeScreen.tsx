import { useSay } from '../../frame/useSay'
import { Notice } from '../../look/widgets/Notice'
import { DrillsPart } from './DrillsPart'
import { DryRunPart } from './DryRunPart'
import { ProgressPart } from './ProgressPart'
import { RoundPart } from './RoundPart'
import { usePractice } from './usePractice'
import './PracticeScreen.css'

/** Training the ear on labelled clips: a round under way, or the choice of drills with how it went so far. */
export function PracticeScreen() {
  const { sayKeyed } = useSay()
  const practice = usePractice()
  if (practice === null) return null
  return (
    <div className="practice">
      {practice.notKept && (
        <Notice severity="wrong">
          <p>{sayKeyed({ key: 'practice_not_kept', values: {} })}</p>
        </Notice>
      )}
      {practice.round === null ? (
        <>
          <DrillsPart practice={practice} />
          <ProgressPart answers={practice.answers} />
          <DryRunPart practice={practice} />
        </>
      ) : (
        <RoundPart practice={practice} round={practice.round} />
      )}
    </div>
  )
}
