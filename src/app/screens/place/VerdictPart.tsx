import { confirmationOf } from '../../../../shared/job/confirmationOf'
import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer, Source, Verdict } from '../../../../shared/locate/answer'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { missingForConfirm } from '../../store/selectors/missingForConfirm'
import { TapeFigure } from '../../tape/TapeFigure'
import './VerdictPart.css'

export interface VerdictPartProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
  readonly chosenPoint: number | null
  readonly onChoose: (point: number) => void
}

/** The verdict, and the figures that are dug by. */
export function VerdictPart(props: VerdictPartProps) {
  const { answer } = props
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
      {best !== undefined && <ByEar {...props} />}
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
  if (!isLocated) {
    return (
      <div className="verdict-figures">
        <p className="verdict-candidate">{say('verdict_candidate', { tape: sayKeyed(source.tape) })}</p>
        <p>{say('verdict_not_to_dig')}</p>
        <p>{say('answer_window', values)}</p>
      </div>
    )
  }
  return (
    <div className="verdict-figures">
      <p className="verdict-tape">
        <TapeFigure tape={source.tape} />
      </p>
      <p>
        {say('verdict_along', { along_m: source.alongM })} {say('answer_window_located', values)}
      </p>
    </div>
  )
}

function OtherSource({ source }: { readonly source: Source }) {
  const { say, sayKeyed } = useSay()
  const values = { along_m: source.alongM, tape: sayKeyed(source.tape), probability: source.probability }
  return <p>{say('answer_second_source', values)}</p>
}

/** Whether somebody has confirmed it, and where nobody has, the way to do so. */
function ByEar({ line, answer, chosenPoint, onChoose }: VerdictPartProps) {
  const { say } = useSay()
  const said = confirmationOf(line, answer)
  const best = missingForConfirm(answer, undefined)?.bestPoint
  const unsaid = line.confirmations.length === 0 ? 'place_not_confirmed' : 'place_confirmed_before'
  const words = {
    yes: 'place_confirmed_yes',
    no: 'place_confirmed_no',
    'not sure': 'place_confirmed_unsure',
  } as const
  return (
    <>
      <p className="verdict-ear" data-said={said?.says ?? 'nothing'}>
        {say(said === null ? unsaid : words[said.says])}
      </p>
      {said === null && best !== undefined && best !== chosenPoint && (
        <div className="row">
          <Button kind="main" onClick={() => onChoose(best)}>
            {say('do_listen_to_point', { point: best })}
          </Button>
        </div>
      )}
    </>
  )
}
