import { type MendStep, MOST_STEP_TEXT, MOST_STEPS } from '../../../../shared/job/mend'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { Panel } from '../../look/widgets/Panel'
import { TextField } from '../../look/widgets/TextField'
import { newId } from '../../newId'
import type { MendPartProps } from './mendPart'

const USUAL = [
  'label_usual_open',
  'label_usual_cut',
  'label_usual_cause',
  'label_usual_dry',
  'label_usual_glue',
  'label_usual_bed',
  'label_usual_proof',
] as const

/** The repair as a list to be ticked off, in the words of whoever does it. */
export function StepsPart({ mend, disabled, onChange }: MendPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const { steps } = mend
  const change = (id: string, part: Partial<MendStep>, typing?: string) =>
    onChange({ steps: steps.map((step) => (step.id === id ? { ...step, ...part } : step)) }, typing)
  const add = (texts: readonly string[]) =>
    onChange({ steps: [...steps, ...texts.map((text) => ({ id: newId(), text, done: false }))] })
  return (
    <Panel heading={say('heading_steps')}>
      <ul className="mend-steps">
        {steps.map((step, i) => (
          <li key={step.id} className="mend-step">
            <label className="mend-tick">
              <input
                type="checkbox"
                checked={step.done}
                disabled={disabled}
                onChange={(event) => change(step.id, { done: event.target.checked })}
              />
              <span className="unseen">{say('label_step_done', { number: i + 1 })}</span>
            </label>
            <TextField
              label={say('label_step', { number: i + 1 })}
              value={step.text}
              mostLength={MOST_STEP_TEXT}
              tall
              disabled={disabled}
              onChange={(text) => change(step.id, { text }, step.id)}
              onDone={store.closeStep}
            />
            <Button
              kind="bare"
              iconOnly
              icon={<Icon name="remove" />}
              disabled={disabled}
              onClick={() => onChange({ steps: steps.filter(({ id }) => id !== step.id) })}
            >
              {say('do_remove_step', { number: i + 1 })}
            </Button>
          </li>
        ))}
      </ul>
      <div className="row">
        {steps.length === 0 && (
          <Button disabled={disabled} onClick={() => add(USUAL.map((key) => say(key)))}>
            {say('do_usual_steps')}
          </Button>
        )}
        <Button icon={<Icon name="add" />} disabled={disabled || steps.length >= MOST_STEPS} onClick={() => add([''])}>
          {say('do_add_step')}
        </Button>
      </div>
    </Panel>
  )
}
