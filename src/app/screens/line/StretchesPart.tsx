import { COVERS, type Line, type Stretch } from '../../../../shared/line/line'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Icon } from '../../look/widgets/Icon'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { SelectField } from '../../look/widgets/SelectField'
import { changeStretches } from '../../store/actions/changeStretches'
import { COVER_WORDS } from './kindWords'
import { ALONG_LIMITS, DEPTH_LIMITS, type LinePartProps } from './linePart'

/** What lies over the line, piece by piece. */
export function StretchesPart({ lineId, line, disabled, onDone }: LinePartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const { stretches } = line
  const put = (next: readonly Stretch[]) => store.dispatch(changeStretches, { lineId, stretches: next })
  return (
    <Panel heading={say('heading_stretches')}>
      {stretches.map((stretch, i) => (
        <Disclosure
          key={String(i)}
          summary={say('label_stretch_line', {
            cover: say(COVER_WORDS[stretch.cover]),
            from_m: stretch.fromM,
            to_m: stretch.toM,
          })}
        >
          <StretchFields
            stretch={stretch}
            disabled={disabled}
            onDone={onDone}
            onChange={(changed) => put(stretches.with(i, changed))}
          />
          <Button
            icon={<Icon name="remove" />}
            disabled={disabled}
            onClick={() => {
              put(stretches.toSpliced(i, 1))
              onDone()
            }}
          >
            {say('do_remove_stretch', { number: i + 1 })}
          </Button>
        </Disclosure>
      ))}
      <Button
        icon={<Icon name="add" />}
        disabled={disabled}
        onClick={() => {
          put([...stretches, nextStretch(line)])
          onDone()
        }}
      >
        {say('do_add_stretch')}
      </Button>
    </Panel>
  )
}

interface StretchFieldsProps {
  readonly stretch: Stretch
  readonly disabled: boolean
  readonly onChange: (stretch: Stretch) => void
  readonly onDone: () => void
}

function StretchFields({ stretch, disabled, onChange, onDone }: StretchFieldsProps) {
  const { say } = useSay()
  const common = { unit: 'm', disabled, onDone } as const
  return (
    <>
      <SelectField
        label={say('label_cover')}
        value={stretch.cover}
        options={COVERS.map((cover) => ({ value: cover, words: say(COVER_WORDS[cover]) }))}
        disabled={disabled}
        onChange={(cover) => {
          const { unknown, ...told } = stretch // the word that was read as "other" is said anew
          onChange({ ...told, ...(unknown && withoutCover(unknown)), cover })
          onDone()
        }}
      />
      <div className="line-pair">
        <NumberField
          label={say('label_from')}
          value={stretch.fromM}
          {...common}
          least={ALONG_LIMITS.least}
          most={stretch.toM}
          onChange={(fromM) => onChange({ ...stretch, fromM: fromM! })}
        />
        <NumberField
          label={say('label_to')}
          value={stretch.toM}
          {...common}
          least={stretch.fromM}
          most={ALONG_LIMITS.most}
          onChange={(toM) => onChange({ ...stretch, toM: toM! })}
        />
      </div>
      <div className="line-pair">
        <NumberField
          label={say('label_stretch_depth')}
          value={stretch.depthM}
          {...common}
          {...DEPTH_LIMITS}
          optional
          onChange={(depthM) => onChange({ ...stretch, depthM })}
        />
        <NumberField
          label={say('label_dig_cost')}
          value={stretch.digCostPerM}
          {...common}
          unit=""
          least={0}
          most={1e9}
          optional
          onChange={(digCostPerM) => onChange({ ...stretch, digCostPerM })}
        />
      </div>
    </>
  )
}

function withoutCover({ cover: _, ...unknown }: Readonly<Record<string, unknown>>) {
  return Object.keys(unknown).length === 0 ? {} : { unknown }
}

/** From where the last one ends to the end of the line. */
function nextStretch({ stretches, lengthM }: Line): Stretch {
  const fromM = stretches.reduce((most, { toM }) => Math.max(most, toM), 0)
  const toM = lengthM !== null && lengthM > fromM ? lengthM : fromM + 1
  return { fromM, toM, cover: 'grass', depthM: null, digCostPerM: null }
}
