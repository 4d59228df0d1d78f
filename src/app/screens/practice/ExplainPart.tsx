import { useEffect, useRef, useState } from 'react'
import type { PracticeAnswer } from '../../../../shared/practice/answers'
import type { Question } from '../../../../shared/practice/drills/question'
import { formatNumber } from '../../../../shared/words/formatQuantity'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Choice } from '../../look/widgets/Choice'
import { answerEntry, MACHINE_WORDS } from './drillWords'
import { clipWords } from './PlayPart'
import { SoundPictures } from './SoundPictures'
import type { RoundPlayer } from './usePlayer'

interface ExplainPartProps {
  readonly question: Question
  readonly given: PracticeAnswer
  readonly player: RoundPlayer
  /** Its level is not one that was asked for. */
  readonly isOfSet?: boolean
  readonly onNext: () => void
}

/** Right or not, why, and what to look and listen for. */
export function ExplainPart({ question, given, player, isOfSet = false, onNext }: ExplainPartProps) {
  const { say } = useSay()
  const { drill, levelDb } = question.order
  const verdict = useRef<HTMLHeadingElement>(null)
  useEffect(() => verdict.current?.focus(), [])
  const why = answerEntry(drill, question.truth)?.[1] ?? 'why_place'
  return (
    <>
      <h3 className={`practice-verdict ${given.right ? 'is-right' : 'is-wrong'}`} tabIndex={-1} ref={verdict}>
        {given.right ? say('heading_right') : say('heading_not_right')}
      </h3>
      <div className="stack-small">
        <TruthWords question={question} given={given} />
        <p>{say(why)}</p>
        <MachineWords question={question} />
        {question.gauge === null && question.truth !== 'no leak' && !isOfSet && (
          <p className="soft">{say('practice_level', { level_db: levelDb })}</p>
        )}
        {!given.right && <p className="soft">{say('practice_comes_back')}</p>}
      </div>
      <Button kind="main" wide onClick={onNext}>
        {say('do_next_question')}
      </Button>
      {question.gauge === null && <ClipExplained question={question} player={player} />}
    </>
  )
}

function TruthWords({ question, given }: Pick<ExplainPartProps, 'question' | 'given'>) {
  const { say } = useSay()
  const entry = answerEntry(question.order.drill, question.truth)
  if (entry !== null) return <p>{say('practice_truth', { truth: say(entry[0]) })}</p>
  const truth = formatNumber(Number(question.truth), 1)
  const error = formatNumber(given.errorSpacings ?? 0, 1)
  return <p>{say('practice_place_truth', { truth, said: given.said, error })}</p>
}

function MachineWords({ question }: Pick<ExplainPartProps, 'question'>) {
  const { say } = useSay()
  const { machine, order } = question
  if (machine === null) return null
  const entry = answerEntry(order.drill, machine.said)
  const other = (MACHINE_WORDS as Readonly<Record<string, (typeof MACHINE_WORDS)[keyof typeof MACHINE_WORDS]>>)[
    machine.said
  ]
  const said = entry !== null ? say(entry[0]) : other !== undefined ? say(other) : formatNumber(Number(machine.said), 1)
  if (machine.bubbling === null) return <p>{say('practice_machine', { said })}</p>
  return <p>{say('practice_machine_bubbling', { said, bubbling: machine.bubbling })}</p>
}

/** Spectrum, spectrogram and sound of the clips, one at a time. */
function ClipExplained({ question, player }: Pick<ExplainPartProps, 'question' | 'player'>) {
  const { say } = useSay()
  const { drill } = question.order
  const telling = question.clips.findIndex(({ telling }) => telling.length > 0)
  const [shown, setShown] = useState(String(Math.max(0, telling)))
  return (
    <section className="stack" aria-label={say('heading_what_told')}>
      <h3>{say('heading_what_told')}</h3>
      {question.clips.length > 1 && (
        <Choice
          label={say('label_clip_shown')}
          value={shown}
          options={question.clips.map(({ name }, i) => ({ value: String(i), words: clipWords(drill, name, say) }))}
          onChange={(value) => {
            player.stop()
            setShown(value)
          }}
        />
      )}
      <SoundPictures
        key={shown}
        clip={question.clips[Number(shown)]!}
        isQuiet={question.truth === 'no leak'}
        player={player}
      />
    </section>
  )
}
