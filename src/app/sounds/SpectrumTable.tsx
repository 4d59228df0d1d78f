import { THIRD_OCTAVE_BANDS } from '../../../shared/spectrum/thirdOctaveBands'
import { formatNumber } from '../../../shared/words/formatQuantity'
import { useSay } from '../frame/useSay'
import { Disclosure } from '../look/widgets/Disclosure'
import { Table } from '../look/widgets/Table'
import type { ShownClips } from './panelClips'
import { LINE_ROLES } from './spectrumLines'
import { clipWords } from './spectrumReading'

/** The spectrum for whoever reads rather than looks: levels of the one-third-octave bands. */
export function SpectrumTable({ clips }: { readonly clips: ShownClips }) {
  const { say } = useSay()
  const shown = LINE_ROLES.flatMap((role) => clips[role] ?? [])
  return (
    <Disclosure summary={say('label_as_table')}>
      {() => (
        <Table
          caption={say('label_band_table')}
          columns={[
            { heading: say('label_band'), align: 'number' },
            ...shown.map((clip) => ({ heading: clipWords(clip, say), align: 'number' as const })),
          ]}
          rows={THIRD_OCTAVE_BANDS.map(({ nominalHz }, i) => ({
            key: String(nominalHz),
            cells: [
              `${nominalHz} Hz`,
              ...shown.map(({ evidence }) => {
                const level = evidence?.bands[i]?.levelDbFs ?? null
                return level === null ? say('label_none') : formatNumber(level, 1)
              }),
            ],
          }))}
        />
      )}
    </Disclosure>
  )
}
