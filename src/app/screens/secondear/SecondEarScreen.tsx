import { PageNotices } from '../../frame/PageNotices'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Panel } from '../../look/widgets/Panel'
import { OpeningPanel } from '../../open/OpeningPanel'
import { shownLine } from '../../store/selectors/shownLine'
import { BesidePart } from './BesidePart'
import { BlindPart } from './BlindPart'
import { BringPart } from './BringPart'
import { EarsPart } from './EarsPart'
import type { EarsProps } from './earsProps'
import { HearPart } from './HearPart'
import { RecordsPart } from './RecordsPart'
import './SecondEarScreen.css'
import { SharePart } from './SharePart'
import { useReview } from './useReview'

/** Somebody else's ear: shared, heard blind, and what came back. */
export function SecondEarScreen() {
  const job = useAppState((state) => state.job)
  const line = useAppState(shownLine)
  return (
    <>
      <PageNotices place="second ear" />
      <OpeningPanel />
      {job !== null && line !== null && <LineEars key={line.id} job={job} line={line} />}
    </>
  )
}

function LineEars({ job, line }: EarsProps) {
  const { say } = useSay()
  const { review } = useReview(job.id, line.id)
  const hasClips = line.sweeps.some(({ clips }) => clips.length > 0)
  if (review.blind) return <BlindPart job={job} line={line} />
  return (
    <div className="ears">
      <div className="stack">
        <EarsPart job={job} line={line} />
        {hasClips && (
          <Panel heading={say('heading_own_opinion')} headingUnseen>
            <Disclosure summary={say('heading_own_opinion')}>{() => <HearPart job={job} line={line} />}</Disclosure>
          </Panel>
        )}
        <RecordsPart />
      </div>
      <div className="stack">
        <SharePart job={job} />
        <BringPart job={job} />
        {hasClips && <BesidePart line={line} />}
      </div>
    </div>
  )
}
