import { type Line, NOISE_KINDS } from '../../../../shared/line/line'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Icon } from '../../look/widgets/Icon'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { SelectField } from '../../look/widgets/SelectField'
import { changeNoises } from '../../store/actions/changeNoises'
import { NOISE_WORDS } from './kindWords'
import { ALONG_LIMITS, type LinePartProps } from './linePart'

/** What else is heard along the line. */
export function NoisesPart({ lineId, line, disabled, onDone }: LinePartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const { noises } = line
  const put = (next: Line['noises'], isDone = true) => {
    store.dispatch(changeNoises, { lineId, noises: next })
    if (isDone) onDone()
  }
  return (
    <Panel heading={say('heading_noises')}>
      <p className="soft">{say('noises_intro')}</p>
      {noises.map((noise, i) => (
        <Disclosure
          key={String(i)}
          summary={say('label_noise_line', { kind: say(NOISE_WORDS[noise.kind]), at_m: noise.atM })}
        >
          <div className="line-pair">
            <SelectField
              label={say('label_kind')}
              value={noise.kind}
              options={NOISE_KINDS.map((kind) => ({ value: kind, words: say(NOISE_WORDS[kind]) }))}
              disabled={disabled}
              onChange={(kind) => put(noises.with(i, { atM: noise.atM, kind }))}
            />
            <NumberField
              label={say('label_at')}
              value={noise.atM}
              unit="m"
              {...ALONG_LIMITS}
              disabled={disabled}
              onChange={(atM) => put(noises.with(i, { ...noise, atM: atM! }), false)}
              onDone={onDone}
            />
          </div>
          <Button icon={<Icon name="remove" />} disabled={disabled} onClick={() => put(noises.toSpliced(i, 1))}>
            {say('do_remove_noise', { number: i + 1 })}
          </Button>
        </Disclosure>
      ))}
      <Button
        icon={<Icon name="add" />}
        disabled={disabled}
        onClick={() => put([...noises, { atM: line.lengthM ?? 0, kind: 'pump' }])}
      >
        {say('do_add_noise')}
      </Button>
    </Panel>
  )
}
