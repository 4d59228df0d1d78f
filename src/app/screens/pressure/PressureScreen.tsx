import { useMemo, useState } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import { freshPressureTest, type PressureTest } from '../../../../shared/job/pressureTests'
import { pipeSize } from '../../../../shared/pressure/pipeSizes'
import { PIPE_WALLS } from '../../../../shared/pressure/pipeWalls'
import type { KnownPipe } from '../../../../shared/pressure/temperatureEffect'
import { CHOICE_WORDS } from '../../../../shared/report/choiceWords'
import { CautionsPart } from '../../frame/CautionsPart'
import { PageNotices } from '../../frame/PageNotices'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { SelectField } from '../../look/widgets/SelectField'
import { newId } from '../../newId'
import { addPressureTest } from '../../store/actions/addPressureTest'
import { shownLine } from '../../store/selectors/shownLine'
import { ComplaintPart } from './ComplaintPart'
import { DropMeaningPart } from './DropMeaningPart'
import { FittingsPart } from './FittingsPart'
import { GaugePart } from './GaugePart'
import { HoldPart } from './HoldPart'
import { ReadingPad } from './ReadingPad'
import { ReadingsPart } from './ReadingsPart'
import { TemperaturePart } from './TemperaturePart'
import { useJudgement } from './useJudgement'
import './PressureScreen.css'

/** Does the line leak at all: the complaint, and hold tests of the line or of parts of it. */
export function PressureScreen() {
  const line = useAppState(shownLine)
  if (line === null) return null
  return <PressureOf key={line.id} line={line} />
}

const NO_TESTS: readonly PressureTest[] = []

function PressureOf({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const { store, nowS } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const unit = useAppState((state) => state.device.units.pressure)
  const tests = line.pressureTests ?? NO_TESTS
  const [chosenId, setChosenId] = useState<string | null>(null)
  const test = tests.find(({ id }) => id === chosenId) ?? tests.at(-1) ?? null
  const add = () => {
    const last = tests.at(-1)
    const gauge = last && { unit: last.unit, resolution: last.resolution, rules: last.rules }
    const fresh = freshPressureTest({ id: newId(), createdS: nowS(), unit, ...gauge })
    store.dispatch(addPressureTest, { lineId: line.id, test: fresh })
    setChosenId(fresh.id)
  }
  const nameOf = (each: PressureTest, i: number) => {
    const name = each.name === '' ? say('label_test_number', { number: i + 1 }) : each.name
    const verdict = each.kept === null ? say('label_test_open') : say(CHOICE_WORDS.holdVerdict[each.kept.verdict])
    return say('label_test_named', { name, verdict })
  }
  return (
    <>
      <PageNotices place="pressure" />
      <CautionsPart step="pressure" />
      <ComplaintPart line={line} disabled={readOnly} />
      <div className={test === null ? 'page-action' : 'pressure-tests'}>
        {test !== null && (
          <SelectField
            label={say('label_which_test')}
            value={test.id}
            options={tests.map((each, i) => ({ value: each.id, words: nameOf(each, i) }))}
            onChange={setChosenId}
          />
        )}
        <Button
          kind={test === null ? 'main' : 'quiet'}
          wide={test === null}
          icon={<Icon name="add" />}
          disabled={readOnly}
          onClick={add}
        >
          {say('do_add_test')}
        </Button>
      </div>
      {test !== null && <TestOf key={test.id} line={line} test={test} readOnly={readOnly} />}
    </>
  )
}

interface TestOfProps {
  readonly line: JobLine
  readonly test: PressureTest
  readonly readOnly: boolean
}

function TestOf({ line, test, readOnly }: TestOfProps) {
  const nominalIn = line.line.pipe?.nominalIn ?? null
  const material = line.line.pipe?.material ?? null
  const pipe = useMemo<KnownPipe>(() => {
    const size = nominalIn === null ? null : pipeSize(nominalIn)
    return { size, wall: material === null ? null : PIPE_WALLS[material] }
  }, [nominalIn, material])
  const judged = useJudgement(test, pipe)
  const [openReading, setOpenReading] = useState<string | null>(null)
  const part = { line, test, disabled: readOnly || test.kept !== null }
  return (
    <div className="pressure">
      <div className="pressure-column pressure-doing">
        <GaugePart {...part} />
        <ReadingPad key={`${test.unit} ${test.resolution}`} {...part} />
      </div>
      <div className="pressure-column pressure-said">
        <HoldPart {...part} readOnly={readOnly} judged={judged} />
        <DropMeaningPart {...part} judged={judged} pipe={pipe} />
      </div>
      <div className="pressure-column pressure-noting">
        <ReadingsPart {...part} judged={judged} openId={openReading} onOpen={setOpenReading} />
        <FittingsPart {...part} />
        <TemperaturePart {...part} />
      </div>
    </div>
  )
}
