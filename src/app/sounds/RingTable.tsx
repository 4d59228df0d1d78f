import type { Ring } from '../../../shared/bubbles/ring'
import { formatNumber, formatQuantity } from '../../../shared/words/formatQuantity'
import { useSay } from '../frame/useSay'
import { Disclosure } from '../look/widgets/Disclosure'
import { Table } from '../look/widgets/Table'

/** The rings of a clip for whoever reads rather than looks. */
export function RingTable({ rings }: { readonly rings: readonly Ring[] }) {
  const { say } = useSay()
  if (rings.length === 0) return <p>{say('spectrogram_no_rings')}</p>
  return (
    <Disclosure summary={say('label_rings', { count: rings.length })}>
      {() => (
        <Table
          caption={say('label_ring_table')}
          captionUnseen
          columns={[
            { heading: say('label_ring_time'), align: 'number' },
            { heading: say('label_ring_pitch'), align: 'number' },
            { heading: say('label_ring_decay'), align: 'number' },
            { heading: say('label_ring_strength'), align: 'number' },
          ]}
          rows={rings.map(({ timeS, pitchHz, decayS, strengthDb }, i) => ({
            key: String(i),
            cells: [
              `${formatNumber(timeS, 2)} s`,
              formatQuantity('pitch_hz', pitchHz),
              `${formatNumber(decayS * 1000, 0)} ms`,
              formatQuantity('strength_db', strengthDb),
            ],
          }))}
        />
      )}
    </Disclosure>
  )
}
