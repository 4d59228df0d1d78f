import { keptJudgement } from '../../../../shared/job/keptJudgement'
import type { DropOf, HoldJudgement } from '../../../../shared/pressure/judgeHold'
import { CHOICE_WORDS } from '../../../../shared/report/choiceWords'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { changePressureTest } from '../../store/actions/changePressureTest'
import { VERSION } from '../../version'
import { HoldCurve } from './HoldCurve'
import type { TestPartProps } from './pressurePart'
import type { Judged } from './useJudgement'

interface HoldPartProps extends TestPartProps {
  readonly readOnly: boolean
  readonly judged: Judged | null
}

const DROP_WORDS = {
  line: 'label_drop_of_line',
  'weeping fitting': 'label_drop_of_fitting',
  'fittings not checked': 'label_drop_unchecked',
} as const satisfies Record<DropOf, string>

/** The verdict with its reasons, and the curve it stands on. */
export function HoldPart({ line, test, disabled, readOnly, judged }: HoldPartProps) {
  const { say } = useSay(test.unit)
  const hasNothing = test.readings.length === 0 && test.cameUp !== false
  if (judged === null || hasNothing) {
    return (
      <Panel heading={say('label_verdict')}>
        <p className="soft">{say('hold_none_yet')}</p>
      </Panel>
    )
  }
  const { judgement } = judged
  const verdict = test.kept?.verdict ?? judgement.verdict
  return (
    <section className="panel hold" data-verdict={verdict} aria-labelledby="hold-verdict" aria-live="polite">
      <h2 id="hold-verdict" className="hold-verdict">
        {say(CHOICE_WORDS.holdVerdict[verdict])}
      </h2>
      {judgement.dropOf !== null && <p className="hold-of">{say(DROP_WORDS[judgement.dropOf])}</p>}
      {test.kept !== null && <KeptNote test={test} judgement={judgement} />}
      <Reasons judgement={judgement} unit={test.unit} />
      <HoldCurve test={test} judgement={judgement} />
      <CloseButtons line={line} test={test} disabled={disabled} readOnly={readOnly} judgement={judgement} />
    </section>
  )
}

function Reasons({ judgement, unit }: { readonly judgement: HoldJudgement; readonly unit: 'psi' | 'kPa' | 'bar' }) {
  const { say, sayKeyed } = useSay(unit)
  const { reasons, fit, verdict } = judgement
  return (
    <ul className="hold-reasons">
      {reasons.map((reason) => (
        <li key={reason.key}>{sayKeyed(reason)}</li>
      ))}
      {verdict === 'drops' && fit !== null && (
        <li>
          {say('hold_rate', {
            rate_fine_kpa: fit.fallKpaPerMin.value,
            low_fine_kpa: fit.fallKpaPerMin.low,
            high_fine_kpa: fit.fallKpaPerMin.high,
          })}
        </li>
      )}
    </ul>
  )
}

function KeptNote({ test, judgement }: { readonly test: TestPartProps['test']; readonly judgement: HoldJudgement }) {
  const { say } = useSay()
  const { kept } = test
  if (kept === null) return null
  return (
    <>
      <p>{say('hold_kept', { verdict: say(CHOICE_WORDS.holdVerdict[kept.verdict]), version: kept.version })}</p>
      {kept.verdict !== judgement.verdict && (
        <p>{say('hold_kept_differs', { verdict: say(CHOICE_WORDS.holdVerdict[judgement.verdict]) })}</p>
      )}
    </>
  )
}

interface CloseButtonsProps extends TestPartProps {
  readonly readOnly: boolean
  readonly judgement: HoldJudgement
}

function CloseButtons({ line, test, readOnly, judgement }: CloseButtonsProps) {
  const { say } = useSay()
  const { store, nowS } = useApp()
  const put = (kept: TestPartProps['test']['kept']) =>
    store.dispatch(changePressureTest, { lineId: line.id, testId: test.id, change: { kept } })
  return (
    <div className="row">
      {test.kept === null ? (
        <Button
          kind="decision"
          disabled={readOnly}
          onClick={() =>
            put({ timeS: nowS(), verdict: judgement.verdict, version: VERSION, judged: keptJudgement(judgement) })
          }
        >
          {say('do_close_test')}
        </Button>
      ) : (
        <Button disabled={readOnly} onClick={() => put(null)}>
          {say('do_read_on')}
        </Button>
      )}
    </div>
  )
}
