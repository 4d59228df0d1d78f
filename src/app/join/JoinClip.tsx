import type { AssignedClip } from '../../../shared/sweep/assignClips'
import { useApp } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { SelectField } from '../look/widgets/SelectField'

export interface JoinClipProps {
  readonly clip: AssignedClip
  /** Another clip says the same. */
  readonly isDoubled: boolean
  readonly pointOptions: readonly { readonly value: string; readonly words: string }[]
}

/** How many takes can be chosen beyond the present one. Chosen. */
const MORE_TAKES = 4

/** One clip of the list: its point, air and take. */
export function JoinClip({ clip, isDoubled, pointOptions }: JoinClipProps) {
  const { say, sayKeyed } = useSay()
  const { joiner } = useApp()
  const { name, point, air, take } = clip
  return (
    <li className="join-clip" data-loose={point === null}>
      <strong className="join-name">{name}</strong>
      <SelectField
        label={say('label_join_point', { name })}
        labelUnseen
        value={point === null ? '' : String(point)}
        options={[{ value: '', words: say('label_no_point') }, ...pointOptions]}
        onChange={(next) => joiner.move(name, { point: next === '' ? null : Number(next) })}
      />
      <SelectField<'on' | 'off'>
        label={say('label_join_air', { name })}
        labelUnseen
        value={air}
        options={[
          { value: 'on', words: say('label_air_on') },
          { value: 'off', words: say('label_air_off') },
        ]}
        onChange={(next) => joiner.move(name, { air: next })}
      />
      <SelectField
        label={say('label_join_take', { name })}
        labelUnseen
        value={String(take)}
        options={Array.from({ length: take + MORE_TAKES }, (_, i) => ({
          value: String(i + 1),
          words: say('label_take_number', { take: i + 1 }),
        }))}
        onChange={(next) => joiner.retake(name, Number(next))}
      />
      {isDoubled && (
        <p className="join-doubled" role="alert">
          {sayKeyed({ key: 'join_doubled', values: { name } })}
        </p>
      )}
    </li>
  )
}
