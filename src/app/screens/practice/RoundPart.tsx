import { useEffect, useMemo, useRef, useState } from 'react'
import { grade } from '../../../../shared/practice/drills/grade'
import type { Question } from '../../../../shared/practice/drills/question'
import { nextOrder } from '../../../../shared/practice/nextOrder'
import { isAborted } from '../../analysis/analyst'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { Progress } from '../../look/widgets/Progress'
import type { PracticeRound } from '../../storage/practice'
import { AnswerPart } from './AnswerPart'
import { DRILL_WORDS } from './drillWords'
import { ExplainPart } from './ExplainPart'
import { GaugeScenePart } from './GaugeScenePart'
import { PlayPart } from './PlayPart'
import { trackOf } from './trackOf'
import { useKeys } from './useKeys'
import { type RoundPlayer, usePlayer } from './usePlayer'
import type { Practice } from './usePractice'

/** Questions of a round. Chosen: some five minutes. */
export const ROUND_QUESTIONS = 10

interface RoundPartProps {
  readonly practice: Practice
  readonly round: PracticeRound
}

/** One question after the other, each explained after its answer. */
export function RoundPart({ practice, round }: RoundPartProps) {
  const { say } = useSay()
  const { answers, own } = practice
  const player = usePlayer()
  const done = answers.slice(round.from)
  if (!round.answered && done.length >= ROUND_QUESTIONS) return <RoundDone practice={practice} round={round} />
  const number = round.answered ? done.length : done.length + 1
  const asked = round.answered
    ? { order: done.at(-1)!.order, isRepeat: done.at(-1)!.isRepeat }
    : nextOrder(answers, round.drill, own)
  return (
    <Panel
      heading={say(DRILL_WORDS[round.drill][0])}
      aside={
        <Button kind="bare" onClick={practice.end}>
          {say('do_end_round')}
        </Button>
      }
    >
      <p className="soft">
        {say('label_question_of', { number, total: ROUND_QUESTIONS })}
        {asked.isRepeat && ` · ${say('label_again')}`}
      </p>
      <AskedPart
        key={`${asked.order.seed} ${number}`}
        practice={practice}
        round={round}
        asked={asked}
        player={player}
      />
    </Panel>
  )
}

function RoundDone({ practice, round }: RoundPartProps) {
  const { say } = useSay()
  const done = practice.answers.slice(round.from)
  const right = done.filter((answer) => answer.right).length
  return (
    <Panel heading={say('heading_round_done')}>
      <p className="practice-verdict">{say('practice_round_score', { right, count: done.length })}</p>
      <div className="row">
        <Button kind="main" onClick={() => practice.start(round.drill)}>
          {say('do_start_round', { drill: say(DRILL_WORDS[round.drill][0]) })}
        </Button>
        <Button onClick={practice.end}>{say('do_to_drills')}</Button>
      </div>
    </Panel>
  )
}

interface AskedPartProps extends RoundPartProps {
  readonly asked: ReturnType<typeof nextOrder>
  readonly player: RoundPlayer
}

function AskedPart({ practice, round, asked, player }: AskedPartProps) {
  const { say, sayKeyed } = useSay()
  const { nowS } = useApp()
  const { question, trouble } = useQuestion(asked)
  const { reset } = player
  useEffect(() => reset(), [reset])
  const frame = useRef<HTMLDivElement>(null)
  const given = round.answered ? practice.answers.at(-1)! : null
  useEffect(() => {
    if (given !== null) frame.current?.querySelector<HTMLElement>('.practice-verdict')?.focus()
  }, [given])
  const first = question?.clips[0]
  useKeys(' ', () => first && player.toggle(trackOf(question, 0)))
  if (trouble !== null) return <p role="alert">{sayKeyed({ key: 'page_fault', values: { why: trouble } })}</p>
  if (question === null) return <Progress words={say('practice_working')} done={0} total={0} />
  const answer = (said: string) => {
    player.stop()
    const { order, isRepeat } = asked
    const { truth, machine } = question
    practice.answer({ timeS: nowS(), order, isRepeat, truth, said, machine, ...grade(order.drill, truth, said) })
  }
  return (
    <div className="stack" ref={frame}>
      {question.gauge !== null && given === null && <GaugeScenePart gauge={question.gauge} />}
      {question.gauge === null && given === null && <PlayPart question={question} player={player} />}
      {given === null ? (
        <AnswerPart
          question={question}
          mayAnswer={question.gauge !== null || player.played.size > 0}
          onAnswer={answer}
        />
      ) : (
        <ExplainPart question={question} given={given} player={player} onNext={practice.next} />
      )}
      {question.gauge !== null && given !== null && <GaugeScenePart gauge={question.gauge} />}
    </div>
  )
}

function useQuestion(asked: ReturnType<typeof nextOrder>): { question: Question | null; trouble: string | null } {
  const { analyst } = useApp()
  const [question, setQuestion] = useState<Question | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const key = JSON.stringify(asked.order)
  const order = useMemo(() => JSON.parse(key) as typeof asked.order, [key])
  useEffect(() => {
    const control = new AbortController()
    analyst.call('practice', order, { signal: control.signal }).then(setQuestion, (error: unknown) => {
      if (!isAborted(error)) setTrouble(String(error))
    })
    return () => control.abort()
  }, [analyst, order])
  return { question, trouble }
}
