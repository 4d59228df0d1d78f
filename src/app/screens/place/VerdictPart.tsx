import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer, Source, Verdict } from '../../../../shared/locate/answer'
import { useSay } from '../../frame/useSay'
import { confirmationOf } from '../../store/selectors/answerOf'
import './VerdictPart.css'

export interface VerdictPartProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}

/** The verdict, and the figures that are dug by. */
export function VerdictPart({ line, answer }: VerdictPartProps) {
  const { say } = useSay()
  const [best, ...others] = answer.sources
  const used = answer.clips.filter((clip) => clip.used).length
  return (
    <section className={`verdict verdict-${answer.verdict.split(' ')[0]}`} aria-label={say('label_place')}>
      <h2 className="verdict-word">{say(WORDS_OF[answer.verdict])}</h2>
      {best === undefined ? (
        <p>{say(answer.verdict === 'no leak heard' ? 'verdict_none_means' : 'answer_unsure_nowhere')}</p>
      ) : (
        <Figures source={best} isLocated={answer.verdict === 'located'} />
      )}
      {others.map((source) => (
        <OtherSource key={source.alongM} source={source} />
      ))}
      <p className="soft">{say('answer_clips_used', { used, clips: answer.clips.length })}</p>
      {best !== undefined && <ByEar line={line} answer={answer} />}
    </section>
  )
}

const WORDS_OF: {
  readonly [Word in Verdict]: 'label_verdict_located' | 'label_verdict_unsure' | 'label_verdict_none'
} = {
  located: 'label_verdict_located',
  unsure: 'label_verdict_unsure',
  'no leak heard': 'label_verdict_none',
}

function Figures({ source, isLocated }: { readonly source: Source; readonly isLocated: boolean }) {
  const { say, sayKeyed } = useSay()
  const [from_m, to_m] = source.windowM
  const values = { from_m, to_m, window_probability: source.windowProbability }
  return (
    <div className="verdict-figures">
      <p className="verdict-figure">
        <span className="verdict-number">{say('label_length', { m: source.alongM })}</span>{' '}
        <span className="verdict-along">{say('label_along_the_line')}</span>
      </p>
      <p className="verdict-tape">{capital(sayKeyed(source.tape))}.</p>
      <p>{isLocated ? say('answer_window_located', values) : say('answer_window', values)}</p>
    </div>
  )
}

function OtherSource({ source }: { readonly source: Source }) {
  const { say, sayKeyed } = useSay()
  const values = { along_m: source.alongM, tape: sayKeyed(source.tape), probability: source.probability }
  return <p>{say('answer_second_source', values)}</p>
}

function ByEar({ line, answer }: VerdictPartProps) {
  const { say } = useSay()
  const said = confirmationOf(line, answer)
  const words = {
    yes: 'place_confirmed_yes',
    no: 'place_confirmed_no',
    'not sure': 'place_confirmed_unsure',
  } as const
  return (
    <p className="verdict-ear" data-said={said?.says ?? 'nothing'}>
      {say(said === null ? 'place_not_confirmed' : words[said.says])}
    </p>
  )
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
