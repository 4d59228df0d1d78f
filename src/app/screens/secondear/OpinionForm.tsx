import { useId, useState } from 'react'
import { MOST_OPINION_TEXT, MOST_REVIEWER } from '../../../../shared/job/opinions'
import { lineRange } from '../../../../shared/line/lineRange'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Choice } from '../../look/widgets/Choice'
import { Notice } from '../../look/widgets/Notice'
import { TextField } from '../../look/widgets/TextField'
import type { Draft } from '../../store/review'
import { commitOpinion } from './commitOpinion'
import type { EarsProps } from './earsProps'
import { useReview } from './useReview'
import { useReviewer } from './useReviewer'

const CONFIDENCES = ['0.5', '0.6', '0.7', '0.8', '0.9', '0.95'] as const

/** Steps of the sliders, m: a hand's breadth. */
const STEP_M = 0.1

/** Of a first window, as a share of the line. Chosen. */
const FIRST_HALF_SHARE = 0.05

/** Where one thinks it is, how sure one is, and who says so. Committed once, and never changed. */
export function OpinionForm({ job, line }: EarsProps) {
  const { say } = useSay()
  const app = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const { review, change, draft } = useReview(job.id, line.id)
  const reviewer = useReviewer()
  const [trouble, setTrouble] = useState<string | null>(null)
  const { says, alongM, fromM, toM, confidence, again, note, comments } = review.draft
  const missing = missingFrom(review.draft)
  const commit = async () => {
    try {
      await commitOpinion(app, { job, line, review, reviewer: reviewer.name.trim() })
      setTrouble(null)
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error))
    }
  }
  return (
    <div className="stack">
      <Choice
        label={say('label_says')}
        value={says}
        options={[
          { value: 'here', words: say('label_says_here') },
          { value: 'cannot hear it', words: say('label_says_not_heard') },
          { value: 'record again', words: say('label_says_again') },
        ]}
        onChange={(value) => draft({ says: value })}
      />
      {says === 'here' && <PlaceFields job={job} line={line} />}
      {says === 'here' && alongM !== null && fromM !== null && toM !== null && (
        <Choice
          label={say('label_confidence')}
          value={CONFIDENCES.find((value) => Number(value) === confidence) ?? null}
          options={CONFIDENCES.map((value) => ({
            value,
            words: say('label_confidence_of', { probability: Number(value) }),
          }))}
          onChange={(value) => draft({ confidence: Number(value) })}
        />
      )}
      {again.length > 0 && (
        <p>
          {say('opinion_again', {
            points: again
              .map(({ point }) => point)
              .sort((a, b) => a - b)
              .join(', '),
          })}
        </p>
      )}
      {comments.length > 0 && <p>{say('opinion_remarks', { count: comments.length })}</p>}
      <TextField
        label={say('label_opinion_note')}
        value={note}
        mostLength={MOST_OPINION_TEXT}
        tall
        onChange={(text) => draft({ note: text })}
      />
      <TextField
        label={say('label_reviewer')}
        value={reviewer.name}
        mostLength={MOST_REVIEWER}
        onChange={reviewer.setName}
        onDone={reviewer.keep}
      />
      {trouble !== null && (
        <Notice severity="wrong">
          <p>{say('opinion_failed', { why: trouble })}</p>
        </Notice>
      )}
      <p className="soft">{say(missing ?? (review.blind ? 'opinion_commit_blind' : 'opinion_commit'))}</p>
      <Button kind="decision" disabled={missing !== null || readOnly} onClick={() => void commit()}>
        {say('do_commit')}
      </Button>
      {review.blind && review.seed !== null && review.laid && (
        <Button kind="bare" onClick={() => change((before) => ({ ...before, laid: false }))}>
          {say('do_shuffle_again')}
        </Button>
      )}
    </div>
  )
}

function missingFrom({ says, alongM, confidence, again }: Draft) {
  if (says === 'here' && alongM === null) return 'opinion_no_place'
  if (says === 'here' && confidence === null) return 'opinion_no_confidence'
  if (says === 'record again' && again.length === 0) return 'opinion_no_again'
  return null
}

/** The place and its window, by two sliders: a thumb is enough. */
function PlaceFields({ job, line }: EarsProps) {
  const { say } = useSay()
  const { review, draft } = useReview(job.id, line.id)
  const alongs = line.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row.alongM))
  const range = lineRange(line.line, alongs)
  if (range === null) return null
  const lengthM = Math.max(range.toM - range.fromM, 4 * STEP_M)
  const { alongM, fromM, toM } = review.draft
  const halfM = fromM === null || toM === null ? Math.max(0.3, FIRST_HALF_SHARE * lengthM) : (toM - fromM) / 2
  const put = (along: number, half: number) => draft({ alongM: along, fromM: along - half, toM: along + half })
  const shownM = alongM ?? range.fromM + lengthM / 2
  return (
    <>
      <Slider
        label={say('label_your_place')}
        words={alongM === null ? say('label_not_said') : say('label_length', { m: alongM })}
        least={range.fromM}
        most={range.fromM + lengthM}
        value={shownM}
        onChange={(along) => put(along, halfM)}
      />
      <Slider
        label={say('label_your_half')}
        words={say('label_length', { m: halfM })}
        least={STEP_M}
        most={Math.max(2 * STEP_M, lengthM / 2)}
        value={halfM}
        onChange={(half) => put(shownM, half)}
      />
      {alongM !== null && fromM !== null && toM !== null && (
        <p>{say('your_window', { along_m: alongM, from_m: fromM, to_m: toM })}</p>
      )}
    </>
  )
}

interface SliderProps {
  readonly label: string
  readonly words: string
  readonly least: number
  readonly most: number
  readonly value: number
  readonly onChange: (value: number) => void
}

function Slider({ label, words, least, most, value, onChange }: SliderProps) {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <div className="listen-slider">
        <input
          id={id}
          type="range"
          min={least}
          max={most}
          step={STEP_M}
          value={value}
          aria-valuetext={words}
          onChange={(event) => onChange(Number(event.target.value))}
        />
        <span>{words}</span>
      </div>
    </div>
  )
}
