import { BARE_SITE } from '../../../../shared/job/site'
import { PageNotices } from '../../frame/PageNotices'
import { useApp, useAppState } from '../../frame/useApp'
import { useIsWide } from '../../frame/useIsWide'
import { useSay } from '../../frame/useSay'
import { OpeningPanel } from '../../open/OpeningPanel'
import { shownLine } from '../../store/selectors/shownLine'
import { AnswerGlance } from './AnswerGlance'
import { LegsPart } from './LegsPart'
import { NamesPart } from './NamesPart'
import { NoisesPart } from './NoisesPart'
import { PipePart } from './PipePart'
import { StretchesPart } from './StretchesPart'
import { SweepsPart } from './SweepsPart'
import { SketchPanel } from './sketch/SketchPanel'
import './LineScreen.css'

/** What is told of the line. The answer follows each change. */
export function LineScreen() {
  const { say } = useSay()
  const { store } = useApp()
  const jobLine = useAppState(shownLine)
  const readOnly = useAppState((state) => state.session.readOnly)
  const isWide = useIsWide('columns')
  if (jobLine === null) return null
  const part = {
    lineId: jobLine.id,
    line: jobLine.line,
    site: jobLine.site ?? BARE_SITE,
    disabled: readOnly,
    onDone: store.closeStep,
  }
  return (
    <div className="line">
      <div className="line-form" key={jobLine.id}>
        <PageNotices place="line" />
        <OpeningPanel />
        <p>{say('line_intro')}</p>
        {!isWide && <SketchPanel key={jobLine.id} jobLine={jobLine} disabled={readOnly} />}
        <LegsPart {...part} />
        <PipePart {...part} />
        <StretchesPart {...part} />
        <NoisesPart {...part} />
        <SweepsPart jobLine={jobLine} disabled={readOnly} onDone={store.closeStep} />
        <NamesPart jobLine={jobLine} disabled={readOnly} />
      </div>
      <div className="line-glance page-action">
        <AnswerGlance jobLine={jobLine} />
        {isWide && <SketchPanel key={jobLine.id} jobLine={jobLine} disabled={readOnly} />}
      </div>
    </div>
  )
}
