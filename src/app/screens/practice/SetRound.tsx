import { useEffect, useState } from 'react'
import { FormatError } from '../../../../shared/base/errors'
import type { PracticeAnswer } from '../../../../shared/practice/answers'
import type { Question } from '../../../../shared/practice/drills/question'
import type { SetClip } from '../../../../shared/practice/set/practiceSet'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { Progress } from '../../look/widgets/Progress'
import { AnswerPart } from './AnswerPart'
import { ExplainPart } from './ExplainPart'
import { PlayPart } from './PlayPart'
import { SetFigures } from './SetFigures'
import { trackOf } from './trackOf'
import { useKeys } from './useKeys'
import { type RoundPlayer, usePlayer } from './usePlayer'
import type { OpenedSet, Sets } from './useSets'

interface SetRoundProps {
  readonly opened: OpenedSet
  readonly sets: Sets
  readonly onEnd: () => void
}

/** Missed clips that come back until they were told right once; they do not count again. */
interface Again {
  /** By number; the first is asked. */
  readonly left: readonly number[]
  readonly said: string | null
}

/** The clips of a set, each once; goes on with the first that has no answer. What was missed can come back afterwards. */
export function SetRound({ opened, sets, onEnd }: SetRoundProps) {
  const { say } = useSay()
  const { set, kept } = opened
  const [explained, setExplained] = useState(false)
  const player = usePlayer()
  const [again, setAgain] = useState<Again | null>(null)
  const number = kept.answers.length + (explained ? 0 : 1)
  const right = kept.answers.filter(({ clip, said }) => set.clips[clip]!.label === said).length
  const end = (
    <Button kind="bare" onClick={onEnd}>
      {say('do_end_round')}
    </Button>
  )
  const missed = kept.answers.filter(({ clip, said }) => set.clips[clip]!.label !== said).map(({ clip }) => clip)
  if (again !== null && again.left.length > 0) {
    const [clip, ...others] = again.left
    const isRight = again.said === set.clips[clip!]!.label
    return (
      <Panel heading={set.name} aside={end}>
        <p className="soft">{say('label_missed_left', { count: again.left.length })}</p>
        <SetClipPart
          key={again.left.join()}
          clip={set.clips[clip!]!}
          drill={set.drill}
          said={again.said}
          player={player}
          onAnswer={(answer) => setAgain({ ...again, said: answer })}
          onNext={() => setAgain({ left: isRight ? others : [...others, clip!], said: null })}
        />
      </Panel>
    )
  }
  if (number > set.clips.length) {
    return (
      <Panel heading={say('heading_round_done')}>
        <p className="practice-verdict">{say('practice_round_score', { right, count: set.clips.length })}</p>
        <SetFigures opened={opened} />
        <div className="row">
          {missed.length > 0 && (
            <Button onClick={() => setAgain({ left: missed, said: null })}>
              {say('do_missed_again', { count: missed.length })}
            </Button>
          )}
          <Button kind="main" onClick={onEnd}>
            {say('do_to_drills')}
          </Button>
        </div>
      </Panel>
    )
  }
  const said = explained ? kept.answers.at(-1)!.said : null
  return (
    <Panel heading={set.name} aside={end}>
      <p className="soft">{say('label_question_of', { number, total: set.clips.length })}</p>
      <SetClipPart
        key={number}
        clip={set.clips[number - 1]!}
        drill={set.drill}
        said={said}
        player={player}
        onAnswer={(answer, machine) => {
          sets.answer(set.id, { clip: number - 1, said: answer }, machine)
          setExplained(true)
        }}
        onNext={() => setExplained(false)}
      />
    </Panel>
  )
}

interface SetClipPartProps {
  readonly clip: SetClip
  readonly drill: 'leak' | 'what'
  readonly said: string | null
  readonly player: RoundPlayer
  /** With what the machine said of the same clip. */
  readonly onAnswer: (said: string, machine: string | null) => void
  readonly onNext: () => void
}

function SetClipPart({ clip, drill, said, player, onAnswer, onNext }: SetClipPartProps) {
  const { say, sayKeyed } = useSay()
  const { analyst } = useApp()
  const [question, setQuestion] = useState<Question | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const { reset } = player
  useEffect(() => reset(), [reset])
  useEffect(() => {
    const { label, wav, without } = clip
    analyst.call('setQuestion', { drill, label, wav, without }).then(setQuestion, (error: unknown) => {
      setTrouble(error instanceof FormatError ? error.message : String(error))
    })
  }, [analyst, clip, drill])
  useKeys(' ', () => question && player.toggle(trackOf(question, 0)))
  if (trouble !== null) return <p role="alert">{sayKeyed({ key: 'file_wrong', values: { why: trouble } })}</p>
  if (question === null) return <Progress words={say('practice_working')} done={0} total={0} />
  if (said === null) {
    return (
      <div className="stack">
        <PlayPart question={question} player={player} />
        <AnswerPart
          question={question}
          mayAnswer={player.played.size > 0}
          onAnswer={(answer) => {
            player.stop()
            onAnswer(answer, question.machine?.said ?? null)
          }}
        />
      </div>
    )
  }
  const given: PracticeAnswer = {
    timeS: 0,
    order: question.order,
    truth: question.truth,
    said,
    right: said === question.truth,
    errorSpacings: null,
    machine: question.machine,
    isRepeat: false,
  }
  const { source, licence, consent } = clip
  return (
    <div className="stack">
      <ExplainPart question={question} given={given} player={player} isOfSet onNext={onNext} />
      <p className="soft">{say('set_clip_origin', { source, licence: licence || '?', consent })}</p>
    </div>
  )
}
