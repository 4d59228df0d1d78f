import { FITTING_MEANS, FITTING_STATES, type FittingCheck } from '../../../../shared/pressure/gaugeLog'
import { CHOICE_WORDS } from '../../../../shared/report/choiceWords'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Choice } from '../../look/widgets/Choice'
import { Icon } from '../../look/widgets/Icon'
import { Panel } from '../../look/widgets/Panel'
import { SelectField } from '../../look/widgets/SelectField'
import { TextField } from '../../look/widgets/TextField'
import { newId } from '../../newId'
import { changePressureTest } from '../../store/actions/changePressureTest'
import type { TestPartProps } from './pressurePart'

/** Each plug and fitting of the test: what may drop without the line leaking at all. */
export function FittingsPart({ line, test, disabled }: TestPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const put = (fittings: readonly FittingCheck[]) =>
    store.dispatch(changePressureTest, { lineId: line.id, testId: test.id, change: { fittings } })
  const change = (id: string, part: Partial<FittingCheck>) =>
    put(test.fittings.map((each) => (each.id === id ? { ...each, ...part } : each)))
  const add = () => put([...test.fittings, { id: newId(), name: '', state: 'not checked', by: null }])
  return (
    <Panel heading={say('heading_fittings')}>
      <p className="soft">{say('fittings_intro')}</p>
      <ul className="pressure-fittings">
        {test.fittings.map((fitting, i) => (
          <li key={fitting.id} className="pressure-fitting">
            <TextField
              label={say('label_fitting_name', { number: i + 1 })}
              value={fitting.name}
              mostLength={200}
              disabled={disabled}
              onChange={(name) => change(fitting.id, { name })}
              onDone={store.closeStep}
            />
            <Choice
              label={say('label_fitting_state')}
              value={fitting.state}
              options={FITTING_STATES.map((value) => ({ value, words: say(CHOICE_WORDS.fittingState[value]) }))}
              disabled={disabled}
              onChange={(state) => change(fitting.id, { state })}
            />
            {fitting.state !== 'not checked' && (
              <SelectField
                label={say('label_fitting_by')}
                value={fitting.by ?? 'unsaid'}
                options={[
                  { value: 'unsaid' as const, words: say('label_by_unsaid') },
                  ...FITTING_MEANS.map((value) => ({ value, words: say(CHOICE_WORDS.fittingMeans[value]) })),
                ]}
                disabled={disabled}
                onChange={(by) => change(fitting.id, { by: by === 'unsaid' ? null : by })}
              />
            )}
            <Button
              kind="bare"
              icon={<Icon name="remove" />}
              disabled={disabled}
              onClick={() => put(test.fittings.filter(({ id }) => id !== fitting.id))}
            >
              {say('do_remove_fitting', {
                name: fitting.name === '' ? say('label_fitting_name', { number: i + 1 }) : fitting.name,
              })}
            </Button>
          </li>
        ))}
      </ul>
      <Button icon={<Icon name="add" />} disabled={disabled} onClick={add}>
        {say('do_add_fitting')}
      </Button>
    </Panel>
  )
}
