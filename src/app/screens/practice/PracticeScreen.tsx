import { useState } from 'react'
import { useSay } from '../../frame/useSay'
import { Notice } from '../../look/widgets/Notice'
import { DetectorPart } from './DetectorPart'
import { DrillsPart } from './DrillsPart'
import { DryRunPart } from './DryRunPart'
import { ProgressPart } from './ProgressPart'
import { RoundPart } from './RoundPart'
import { SetRound } from './SetRound'
import { SetsPart } from './SetsPart'
import { usePractice } from './usePractice'
import { useSets } from './useSets'
import './PracticeScreen.css'

/** Training the ear on labelled clips: a round under way, or the choice of drills with how it went so far. */
export function PracticeScreen() {
  const { sayKeyed } = useSay()
  const practice = usePractice()
  const sets = useSets()
  const [setId, setSetId] = useState<string | null>(null)
  if (practice === null) return null
  const opened = sets.sets.find(({ set }) => set.id === setId)
  if (opened !== undefined) {
    return (
      <div className="practice">
        <SetRound opened={opened} sets={sets} onEnd={() => setSetId(null)} />
      </div>
    )
  }
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
          <ProgressPart answers={practice.answers} sets={sets.sets} />
          <SetsPart sets={sets} onPractise={setSetId} />
          <DryRunPart practice={practice} />
          <DetectorPart />
        </>
      ) : (
        <RoundPart practice={practice} round={practice.round} />
      )}
    </div>
  )
}
