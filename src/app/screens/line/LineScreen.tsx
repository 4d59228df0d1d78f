import { PageNotices } from '../../frame/PageNotices'
import { useApp, useAppState } from '../../frame/useApp'
import { useIsWide } from '../../frame/useIsWide'
import { useSay } from '../../frame/useSay'
import { OpeningPanel } from '../../open/OpeningPanel'
import { shownLine } from '../../store/selectors/shownLine'
import { AnswerGlance } from './AnswerGlance'
import { LegsPart } from './LegsPart'
import { LineSketch } from './LineSketch'
import { NamesPart } from './NamesPart'
import { NoisesPart } from './NoisesPart'
import { PipePart } from './PipePart'
import { StretchesPart } from './StretchesPart'
import { SweepsPart } from './SweepsPart'
import './LineScreen.css'

/** What is told of the line. The answer follows each change. */
export function LineScreen() {
  const { say } = useSay()
  const { store } = useApp()
  const jobLine = useAppState(shownLine)
  const readOnly = useAppState((state) => state.session.readOnly)
  const isWide = useIsWide('columns')
  if (jobLine === null) return null
  const part = { lineId: jobLine.id, line: jobLine.line, disabled: readOnly, onDone: store.closeStep }
  return (
    <div className="line">
      <div className="line-form" key={jobLine.id}>
        <PageNotices place="line" />
        <OpeningPanel />
        <p>{say('line_intro')}</p>
        {!isWide && <LineSketch jobLine={jobLine} />}
        <LegsPart {...part} />
        <PipePart {...part} />
        <StretchesPart {...part} />
        <NoisesPart {...part} />
        <SweepsPart jobLine={jobLine} disabled={readOnly} onDone={store.closeStep} />
        <NamesPart jobLine={jobLine} disabled={readOnly} />
      </div>
      <div className="line-glance page-action">
        <AnswerGlance jobLine={jobLine} />
        {isWide && <LineSketch jobLine={jobLine} />}
      </div>
    </div>
  )
}
