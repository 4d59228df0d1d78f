import { useState } from 'react'
import type { PressureTest } from '../../../../shared/job/pressureTests'
import { KPA_PER } from '../../../../shared/pressure/pressureUnit'
import { readQuantity } from '../../../../shared/words/readQuantity'
import { useApp } from '../../frame/useApp'
import { useNow } from '../../frame/useNow'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { newId } from '../../newId'
import { addReading } from '../../store/actions/addReading'
import { changePressureTest } from '../../store/actions/changePressureTest'
import { clockText, gaugeText, type TestPartProps } from './pressurePart'

/** The clock, and a pad to keep what the needle shows with one thumb. */
export function ReadingPad({ line, test, disabled }: TestPartProps) {
  const { say, units } = useSay(test.unit)
  const { store, nowS } = useApp()
  const [value, setValue] = useState(() => firstValue(test))
  const [typed, setTyped] = useState<string | null>(null)
  const { unit, resolution, clockStartS } = test
  const isRunning = clockStartS !== null
  const step = (by: number) => {
    setTyped(null)
    setValue((before) => Number((Math.round(before / resolution + by) * resolution).toPrecision(9)))
  }
  const type = (text: string) => {
    setTyped(text)
    const read = readQuantity(text, '', units)
    if (read.kind === 'number') setValue(read.value)
  }
  const shown = gaugeText(value, resolution)
  const wrong = typed !== null && readQuantity(typed, '', units).kind !== 'number'
  const keep = () => {
    const now = nowS()
    const timeS = isRunning ? Math.round((now - clockStartS) * 10) / 10 : 0
    const reading = { id: newId(), timeS, value, note: '', leftOut: false }
    const ids = { lineId: line.id, testId: test.id }
    store.dispatch(addReading, { ...ids, reading, ...(!isRunning && { clockStartS: now }) })
    setTyped(null)
  }
  const refuse = () => {
    const reading = { id: newId(), timeS: -1, value, note: '', leftOut: false }
    const change = { cameUp: false, readings: [...test.readings, reading] }
    store.dispatch(changePressureTest, { lineId: line.id, testId: test.id, change })
  }
  if (disabled || test.cameUp === false) return <PadShut line={line} test={test} disabled={disabled} />
  return (
    <Panel heading={say('heading_clock')}>
      {isRunning ? <Clock test={test} clockStartS={clockStartS} /> : <StartSteps />}
      <div className="pad">
        <label className="pad-needle">
          <span>{say('label_needle')}</span>
          <span className="pad-box" data-wrong={wrong}>
            <input
              className="pad-value"
              inputMode="decimal"
              autoComplete="off"
              enterKeyHint="done"
              size={5}
              aria-invalid={wrong}
              value={typed ?? shown}
              onChange={(event) => type(event.target.value)}
              onBlur={() => !wrong && setTyped(null)}
            />
            <span className="pad-unit">{unit}</span>
          </span>
        </label>
        <button type="button" className="pad-step" onClick={() => step(-1)}>
          <PadMark down />
          <span className="unseen">{say('do_lower', { step: `${resolution} ${unit}` })}</span>
          <span aria-hidden="true">{resolution}</span>
        </button>
        <button type="button" className="pad-step" onClick={() => step(1)}>
          <PadMark />
          <span className="unseen">{say('do_higher', { step: `${resolution} ${unit}` })}</span>
          <span aria-hidden="true">{resolution}</span>
        </button>
      </div>
      {!isRunning && (
        <div className="row">
          <Button onClick={refuse}>{say('do_will_not_come_up')}</Button>
        </div>
      )}
      <div className="page-action pad-action">
        <Button kind="main" wide disabled={wrong} onClick={keep}>
          {isRunning ? say('do_keep_reading', { value: shown, unit }) : say('do_start_clock', { value: shown, unit })}
        </Button>
      </div>
    </Panel>
  )
}

/** Closed, or the pressure never came: nothing to tap. */
function PadShut({ line, test, disabled }: TestPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  if (test.cameUp !== false) return null
  const again = () => store.dispatch(changePressureTest, { lineId: line.id, testId: test.id, change: { cameUp: null } })
  return (
    <div className="row">
      <Button disabled={disabled} onClick={again}>
        {say('do_came_up')}
      </Button>
    </div>
  )
}

/** The last reading, or the middle of what is asked. */
function firstValue({ readings, rules, unit, resolution }: PressureTest): number {
  const last = readings.at(-1)
  if (last !== undefined) return last.value
  const middle = (rules.leastKpa + rules.mostKpa) / 2 / KPA_PER[unit]
  return Number((Math.round(middle / resolution) * resolution).toPrecision(9))
}

function StartSteps() {
  const { say } = useSay()
  return (
    <ol className="pressure-steps">
      {(['clock_step_up', 'clock_step_shut', 'clock_step_start', 'clock_step_read'] as const).map((key) => (
        <li key={key}>{say(key)}</li>
      ))}
    </ol>
  )
}

function Clock({ test, clockStartS }: { readonly test: PressureTest; readonly clockStartS: number }) {
  const { say } = useSay()
  const passedS = useNow(true) - clockStartS
  const leftS = test.rules.leastHoldS - passedS
  const last = test.readings.reduce((latest, { timeS }) => Math.max(latest, timeS), 0)
  return (
    <div className="clock">
      <p className="clock-time">
        <span className="unseen">{`${say('label_clock')}: `}</span>
        {clockText(passedS)}
      </p>
      <p className="clock-left">
        <strong>{leftS > 0 ? say('label_clock_left', { time: clockText(leftS) }) : say('label_clock_reached')}</strong>
        <span className="soft">{say('label_clock_since', { time: clockText(Math.max(0, passedS - last)) })}</span>
      </p>
    </div>
  )
}

/** Down or up, drawn. */
function PadMark({ down = false }: { readonly down?: boolean }) {
  return (
    <svg
      width="28"
      height="28"
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth="2.6"
      aria-hidden="true"
    >
      <path d={down ? 'M5 9l7 7 7-7' : 'M5 15l7-7 7 7'} strokeLinecap="round" strokeLinejoin="round" />
    </svg>
  )
}
