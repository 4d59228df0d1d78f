import { useEffect, useState } from 'react'
import { FormatError } from '../../../../shared/base/errors'
import type { PracticeAnswer } from '../../../../shared/practice/answers'
import type { Question } from '../../../../shared/practice/drills/question'
import { type NextOfSet, nextOfSet } from '../../../../shared/practice/set/nextOfSet'
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

/** The clips of a set, each once, and in between what was missed; goes on where it was after a reload. */
export function SetRound({ opened, sets, onEnd }: SetRoundProps) {
  const { say } = useSay()
  const { nowS } = useApp()
  const { set, kept } = opened
  // What was just answered stays on show until it was explained.
  const [explained, setExplained] = useState<{ readonly asked: NextOfSet; readonly said: string } | null>(null)
  const player = usePlayer()
  const asked = explained?.asked ?? nextOfSet(set, kept)
  const first = kept.answers.filter(({ clip, said }) => set.clips[clip]!.label === said).length
  if (asked === null) {
    return (
      <Panel heading={say('heading_round_done')}>
        <p className="practice-verdict">{say('practice_round_score', { right: first, count: set.clips.length })}</p>
        <SetFigures opened={opened} />
        <Button kind="main" onClick={onEnd}>
          {say('do_to_drills')}
        </Button>
      </Panel>
    )
  }
  const number = kept.answers.length + (explained === null || asked.isRepeat ? 1 : 0)
  const told = say('label_question_of', { number: Math.min(number, set.clips.length), total: set.clips.length })
  return (
    <Panel
      heading={set.name}
      aside={
        <Button kind="bare" onClick={onEnd}>
          {say('do_end_round')}
        </Button>
      }
    >
      <p className="soft">
        {told}
        {asked.isRepeat && ` · ${say('label_again')}`}
      </p>
      <SetClipPart
        key={`${asked.clip} ${kept.answers.length + (kept.repeats?.length ?? 0) - Number(explained !== null)}`}
        clip={set.clips[asked.clip]!}
        drill={set.drill}
        said={explained?.said ?? null}
        player={player}
        onAnswer={(said, { machine, levelDb }) => {
          const answer = { clip: asked.clip, said, timeS: nowS(), levelDb }
          if (asked.isRepeat) sets.answerAgain(set.id, answer)
          else sets.answer(set.id, answer, machine)
          setExplained({ asked, said })
        }}
        onNext={() => setExplained(null)}
      />
    </Panel>
  )
}

interface SetClipPartProps {
  readonly clip: SetClip
  readonly drill: 'leak' | 'what'
  readonly said: string | null
  readonly player: RoundPlayer
  /** With what the machine said of the same clip, and how clear it is where that is known. */
  readonly onAnswer: (said: string, known: { readonly machine: string | null; readonly levelDb: number | null }) => void
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
            const { levelDb } = question.order
            const level = Number.isFinite(levelDb) ? levelDb : null
            onAnswer(answer, { machine: question.machine?.said ?? null, levelDb: level })
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
