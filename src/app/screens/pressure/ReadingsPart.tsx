import { useState } from 'react'
import type { PressureTest } from '../../../../shared/job/pressureTests'
import type { GaugeReading } from '../../../../shared/pressure/gaugeLog'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Notice } from '../../look/widgets/Notice'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { SelectField } from '../../look/widgets/SelectField'
import { Switch } from '../../look/widgets/Switch'
import { Table } from '../../look/widgets/Table'
import { TextField } from '../../look/widgets/TextField'
import { newId } from '../../newId'
import { addReading } from '../../store/actions/addReading'
import { changePressureTest } from '../../store/actions/changePressureTest'
import { clockText, gaugeText, type TestPartProps } from './pressurePart'
import type { Judged } from './useJudgement'

interface ReadingsPartProps extends TestPartProps {
  readonly judged: Judged | null
  /** The reading that is being corrected. */
  readonly openId: string | null
  readonly onOpen: (id: string | null) => void
}

const TIME_LIMITS = { least: -100_000, most: 1_000_000 }
const VALUE_LIMITS = { least: -100, most: 100_000 }

/** The log: what is odd in it, all of it, a way to correct it, and a way to type one from paper. */
export function ReadingsPart({ line, test, disabled, judged, openId, onOpen }: ReadingsPartProps) {
  const { say, sayKeyed } = useSay(test.unit)
  const open = test.readings.find(({ id }) => id === openId) ?? null
  const problems = judged?.judgement.problems ?? []
  if (test.readings.length === 0) return disabled ? null : <TypedReading line={line} test={test} disabled={disabled} />
  return (
    <Panel heading={say('label_readings_log', { count: test.readings.length })}>
      {problems.map((problem) => (
        <Notice key={`${problem.key} ${problem.readingId}`} severity={problem.severity === 'doubt' ? 'wrong' : 'odd'}>
          <p>{sayKeyed(problem)}</p>
          <div className="row">
            <Button disabled={disabled} onClick={() => onOpen(problem.readingId)}>
              {say('do_open_reading', { reading: problem.values.reading ?? 0 })}
            </Button>
          </div>
        </Notice>
      ))}
      <Disclosure summary={say('label_all_readings')}>{() => <ReadingsTable test={test} />}</Disclosure>
      {!disabled && (
        <SelectField
          label={say('label_which_reading')}
          value={openId ?? ''}
          options={[
            { value: '', words: say('label_reading_none') },
            ...test.readings.map(({ id, timeS }, i) => ({
              value: id,
              words: say('label_reading_number', { number: i + 1, time: clockText(timeS) }),
            })),
          ]}
          onChange={(id) => onOpen(id === '' ? null : id)}
        />
      )}
      {open !== null && !disabled && <Correction key={open.id} line={line} test={test} reading={open} />}
      {!disabled && <TypedReading line={line} test={test} disabled={disabled} />}
    </Panel>
  )
}

function ReadingsTable({ test }: { readonly test: PressureTest }) {
  const { say } = useSay()
  return (
    <Table
      caption={say('label_readings_log', { count: test.readings.length })}
      captionUnseen
      columns={[
        { heading: say('label_column_time') },
        { heading: say('label_column_gauge', { unit: test.unit }), align: 'number' },
        { heading: say('label_column_note') },
      ]}
      rows={test.readings.map(({ id, timeS, value, note, leftOut }) => ({
        key: id,
        cells: [
          clockText(timeS),
          gaugeText(value, test.resolution),
          [leftOut ? say('label_left_out') : '', note].filter(Boolean).join(': '),
        ],
      }))}
    />
  )
}

interface CorrectionProps {
  readonly line: TestPartProps['line']
  readonly test: PressureTest
  readonly reading: GaugeReading
}

function Correction({ line, test, reading }: CorrectionProps) {
  const { say } = useSay()
  const { store } = useApp()
  const put = (change: Partial<GaugeReading>) => {
    const readings = test.readings.map((each) => (each.id === reading.id ? { ...each, ...change } : each))
    store.dispatch(changePressureTest, { lineId: line.id, testId: test.id, change: { readings } })
  }
  return (
    <div className="stack">
      <div className="pressure-pair">
        <NumberField
          label={say('label_reading_time')}
          value={reading.timeS}
          unit="s"
          {...TIME_LIMITS}
          onChange={(timeS) => timeS !== null && put({ timeS })}
          onDone={store.closeStep}
        />
        <NumberField
          label={say('label_reading_value', { unit: test.unit })}
          value={reading.value}
          unit={test.unit}
          {...VALUE_LIMITS}
          onChange={(value) => value !== null && put({ value })}
          onDone={store.closeStep}
        />
      </div>
      <TextField
        label={say('label_reading_note')}
        value={reading.note}
        mostLength={2000}
        onChange={(note) => put({ note })}
        onDone={store.closeStep}
      />
      <Switch words={say('label_leave_out')} on={reading.leftOut} onChange={(leftOut) => put({ leftOut })} />
    </div>
  )
}

/** A reading from paper: its time on the clock, and what was read. */
function TypedReading({ line, test }: TestPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const [timeS, setTimeS] = useState<number | null>(null)
  const [value, setValue] = useState<number | null>(null)
  const [round, setRound] = useState(0)
  const add = () => {
    if (timeS === null || value === null) return
    const reading = { id: newId(), timeS, value, note: '', leftOut: false }
    store.dispatch(addReading, { lineId: line.id, testId: test.id, reading })
    setTimeS(null)
    setValue(null)
    setRound(round + 1)
  }
  return (
    <Disclosure summary={say('label_typed_reading')}>
      <div className="stack" key={round}>
        <div className="pressure-pair">
          <NumberField
            label={say('label_reading_time')}
            value={timeS}
            unit="s"
            optional
            {...TIME_LIMITS}
            onChange={setTimeS}
            onWrong={() => setTimeS(null)}
          />
          <NumberField
            label={say('label_reading_value', { unit: test.unit })}
            value={value}
            unit={test.unit}
            optional
            {...VALUE_LIMITS}
            onChange={setValue}
            onWrong={() => setValue(null)}
          />
        </div>
        <Button disabled={timeS === null || value === null} onClick={add}>
          {say('do_add_typed')}
        </Button>
      </div>
    </Disclosure>
  )
}
