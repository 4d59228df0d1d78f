import { FIRST_RESOLUTION, type PressureTest } from '../../../../shared/job/pressureTests'
import { DEFAULT_HOLD_RULES, type HoldRules } from '../../../../shared/pressure/gaugeLog'
import {
  COMMON_RESOLUTIONS,
  KPA_PER,
  PRESSURE_UNITS,
  type PressureUnit,
} from '../../../../shared/pressure/pressureUnit'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Choice } from '../../look/widgets/Choice'
import { Disclosure } from '../../look/widgets/Disclosure'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { SelectField } from '../../look/widgets/SelectField'
import { TextField } from '../../look/widgets/TextField'
import { changePressureTest } from '../../store/actions/changePressureTest'
import type { TestPartProps } from './pressurePart'

const UNIT_WORDS = { psi: 'label_unit_psi', kPa: 'label_unit_kpa', bar: 'label_unit_bar' } as const

/** What is tested, with which gauge, and what is asked of it. */
export function GaugePart({ line, test, disabled }: TestPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const put = (change: Partial<PressureTest>) =>
    store.dispatch(changePressureTest, { lineId: line.id, testId: test.id, change })
  const steps = COMMON_RESOLUTIONS[test.unit]
  const known = steps.includes(test.resolution) ? steps : [test.resolution, ...steps]
  const putUnit = (unit: PressureUnit) => {
    const wasUsual =
      DEFAULT_HOLD_RULES[test.unit] === test.rules || sameRules(DEFAULT_HOLD_RULES[test.unit], test.rules)
    put({ unit, resolution: FIRST_RESOLUTION[unit], ...(wasUsual && { rules: DEFAULT_HOLD_RULES[unit] }) })
    store.closeStep()
  }
  return (
    <Panel heading={say('heading_gauge')}>
      <TextField
        label={say('label_test_name')}
        value={test.name}
        mostLength={200}
        disabled={disabled}
        onChange={(name) => put({ name })}
        onDone={store.closeStep}
      />
      <Choice
        label={say('label_gauge_unit')}
        value={test.unit}
        options={PRESSURE_UNITS.map((value) => ({ value, words: say(UNIT_WORDS[value]) }))}
        disabled={disabled}
        onChange={putUnit}
      />
      <SelectField
        label={say('label_gauge_step')}
        value={String(test.resolution)}
        options={known.map((step) => ({
          value: String(step),
          words: say('label_step_line', { step, unit: test.unit }),
        }))}
        disabled={disabled}
        onChange={(step) => put({ resolution: Number(step) })}
      />
      <AskedFields line={line} test={test} disabled={disabled} />
    </Panel>
  )
}

function AskedFields({ line, test, disabled }: TestPartProps) {
  const { say } = useSay('psi')
  const { store } = useApp()
  const { rules, unit } = test
  const put = (change: Partial<PressureTest>) =>
    store.dispatch(changePressureTest, { lineId: line.id, testId: test.id, change })
  const putRules = (change: Partial<HoldRules>) => put({ rules: { ...rules, ...change } })
  const shown = (kpa: number) => Number((kpa / KPA_PER[unit]).toPrecision(6))
  const field = { disabled, onDone: store.closeStep }
  const summary = say('label_asked_summary', {
    least: shown(rules.leastKpa),
    most: shown(rules.mostKpa),
    unit,
    held_min: rules.leastHoldS / 60,
  })
  return (
    <Disclosure summary={summary}>
      <div className="stack">
        <p className="soft">{say('gauge_asked_hint')}</p>
        <div className="pressure-pair">
          <NumberField
            {...field}
            label={say('label_asked_least')}
            value={shown(rules.leastKpa)}
            unit={unit}
            least={0}
            most={3500 / KPA_PER[unit]}
            onChange={(value) => value !== null && putRules({ leastKpa: value * KPA_PER[unit] })}
          />
          <NumberField
            {...field}
            label={say('label_asked_most')}
            value={shown(rules.mostKpa)}
            unit={unit}
            least={0}
            most={3500 / KPA_PER[unit]}
            onChange={(value) => value !== null && putRules({ mostKpa: value * KPA_PER[unit] })}
          />
        </div>
        <NumberField
          {...field}
          label={say('label_asked_hold')}
          value={rules.leastHoldS / 60}
          unit=""
          least={1}
          most={1440}
          onChange={(value) => value !== null && putRules({ leastHoldS: value * 60 })}
        />
        <NumberField
          {...field}
          label={say('label_part_length')}
          value={test.lengthM}
          unit="m"
          least={0.01}
          most={10_000}
          optional
          onChange={(lengthM) => put({ lengthM })}
        />
      </div>
    </Disclosure>
  )
}

function sameRules(a: HoldRules, b: HoldRules): boolean {
  return a.leastKpa === b.leastKpa && a.mostKpa === b.mostKpa && a.leastHoldS === b.leastHoldS
}
