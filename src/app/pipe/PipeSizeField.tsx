import type { Line } from '../../../shared/line/line'
import { KNOWN_SIZES_IN } from '../../../shared/pressure/pipeSizes'
import { useApp } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { SelectField } from '../look/widgets/SelectField'
import { changePipeSize } from '../store/actions/changePipeSize'

interface PipeSizeFieldProps {
  readonly lineId: string
  readonly line: Line
  readonly disabled: boolean
}

/** The pipe's nominal size; one that stands in the line's file and in no table is kept among the others. */
export function PipeSizeField({ lineId, line, disabled }: PipeSizeFieldProps) {
  const { say } = useSay()
  const { store } = useApp()
  const nominalIn = line.pipe?.nominalIn ?? null
  const sizes =
    nominalIn === null || KNOWN_SIZES_IN.includes(nominalIn) ? KNOWN_SIZES_IN : [...KNOWN_SIZES_IN, nominalIn]
  return (
    <SelectField
      label={say('label_pipe_size')}
      value={nominalIn === null ? '' : String(nominalIn)}
      options={[
        { value: '', words: say('label_size_unsaid') },
        ...[...sizes]
          .sort((a, b) => a - b)
          .map((inches) => ({ value: String(inches), words: say('label_size_line', { size: inches }) })),
      ]}
      disabled={disabled}
      onChange={(text) => store.dispatch(changePipeSize, { lineId, nominalIn: text === '' ? null : Number(text) })}
    />
  )
}
