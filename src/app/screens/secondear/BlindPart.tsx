import { useSay } from '../../frame/useSay'
import { Choice } from '../../look/widgets/Choice'
import { Panel } from '../../look/widgets/Panel'
import { newId } from '../../newId'
import type { EarsProps } from './earsProps'
import { HearPart } from './HearPart'
import { ShowAnswer } from './ShowAnswer'
import { useReview } from './useReview'

/** Hearing a line before anybody said where: no answer, no ranking, nobody's opinion. */
export function BlindPart({ job, line }: EarsProps) {
  const { say } = useSay()
  const { review, change } = useReview(job.id, line.id)
  const isBegun = review.heard.length > 0 || Object.keys(review.draft.marks).length > 0
  return (
    <div className="stack">
      <Panel heading={say('heading_blind')}>
        <p>{say('blind_how')}</p>
        <Choice
          label={say('label_order')}
          value={review.seed === null ? 'own' : 'shuffled'}
          options={[
            { value: 'own', words: say('label_order_own') },
            { value: 'shuffled', words: say('label_order_shuffled') },
          ]}
          disabled={isBegun}
          onChange={(order) =>
            change((before) => ({
              ...before,
              seed: order === 'own' ? null : newId(),
              laid: order === 'own',
            }))
          }
        />
        <p className="soft">{say(isBegun ? 'blind_order_begun' : 'blind_order_why')}</p>
        <ShowAnswer jobId={job.id} />
      </Panel>
      <HearPart job={job} line={line} />
    </div>
  )
}
