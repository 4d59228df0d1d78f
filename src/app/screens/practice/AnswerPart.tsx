import { useId, useState } from 'react'
import { OPTIONS, PLACE_POINTS, type Question } from '../../../../shared/practice/drills/question'
import { formatNumber } from '../../../../shared/words/formatQuantity'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { answerEntry } from './drillWords'
import { useKeys } from './useKeys'

interface AnswerPartProps {
  readonly question: Question
  readonly mayAnswer: boolean
  readonly onAnswer: (said: string) => void
}

/** What can be answered: by thumb, or by the number that stands before it. */
export function AnswerPart({ question, mayAnswer, onAnswer }: AnswerPartProps) {
  const { say } = useSay()
  const options = OPTIONS[question.order.drill] ?? []
  useKeys('123456'.slice(0, options.length), (index) => mayAnswer && onAnswer(options[index]!))
  return (
    <section className="stack-small" aria-label={say('label_your_answer')}>
      <h3>{say('label_your_answer')}</h3>
      {options.length === 0 ? (
        <PlaceAnswer mayAnswer={mayAnswer} onAnswer={onAnswer} />
      ) : (
        <div className="practice-answers">
          {options.map((option, i) => (
            <Button key={option} disabled={!mayAnswer} onClick={() => onAnswer(option)}>
              <span className="practice-key" aria-hidden="true">
                {i + 1}
              </span>
              {say(answerEntry(question.order.drill, option)![0])}
            </Button>
          ))}
        </div>
      )}
    </section>
  )
}

/** One step of the slider, spacings. */
const STEP = 0.1

function PlaceAnswer({ mayAnswer, onAnswer }: Omit<AnswerPartProps, 'question'>) {
  const { say } = useSay()
  const [at, setAt] = useState((1 + PLACE_POINTS) / 2)
  const id = useId()
  const words = formatNumber(at, 1)
  return (
    <div className="stack-small">
      <label htmlFor={id}>{say('label_place_at', { at: words })}</label>
      <input
        id={id}
        className="practice-slider"
        type="range"
        min={1}
        max={PLACE_POINTS}
        step={STEP}
        value={at}
        onChange={(event) => setAt(Number(event.target.value))}
      />
      <div className="practice-pegs" aria-hidden="true">
        {Array.from({ length: PLACE_POINTS }, (_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a point is its number
          <span key={i}>{i + 1}</span>
        ))}
      </div>
      <Button kind="main" disabled={!mayAnswer} onClick={() => onAnswer(words)}>
        {say('do_place_here')}
      </Button>
    </div>
  )
}
