import fc from 'fast-check'
import { expect, it } from 'vitest'
import { EARLY_ENDS, type PhoneAccount, PROCESSING } from '../../../shared/sweep/phoneAccount'
import { readSweepCsv } from '../../../shared/sweep/readSweepCsv'
import { CONTACTS, type SweepRow } from '../../../shared/sweep/sweep'
import { writeSweepCsv } from '../../../shared/sweep/writeSweepCsv'

const text = fc.string({ unit: 'grapheme', maxLength: 12 })
const place = fc.double({ min: -9999, max: 9999, noNaN: true }).map((value) => value + 0)
const name = fc
  .string({ unit: fc.constantFrom('a', 'é', '0', '-', ',', ';', '"', ' x') })
  .map((stem) => `n${stem}n.wav`)

const phone: fc.Arbitrary<PhoneAccount> = fc.record({
  processing: fc.subarray([...PROCESSING], { minLength: 1 }),
  deviceHz: fc.option(fc.integer({ min: 1, max: 192_000 }), { nil: null }),
  endedBy: fc.constantFrom(...EARLY_ENDS, null),
})

const row = (shared: boolean): fc.Arbitrary<SweepRow> =>
  fc.record({
    point: fc.integer({ min: -9, max: 999_999 }),
    alongM: place,
    file: fc.oneof(
      name,
      name.map((file) => `clips/${file}`),
    ),
    air: fc.constantFrom('on' as const, 'off' as const),
    take: shared ? fc.integer({ min: 1, max: 9 }) : fc.constant(1),
    sharedTake: fc.constant(shared),
    sweep: fc.constantFrom('1', 'fine', 'the "coarse", one'),
    offsetM: place,
    timeS: fc.option(fc.oneof(fc.integer({ min: -1e9, max: 4e9 }), fc.double({ min: 4e7, max: 4e9, noNaN: true })), {
      nil: null,
    }),
    contact: fc.option(fc.constantFrom(...CONTACTS), { nil: null }),
    airKpa: fc.option(
      fc.double({ min: 0, max: 9999, noNaN: true }).map((value) => value + 0),
      { nil: null },
    ),
    note: text,
    phone,
    unknown: fc.record({ crew: text, 'soil; wet?': text }),
  })

const rows = fc.boolean().chain((shared) =>
  fc.uniqueArray(row(shared), {
    minLength: 1,
    maxLength: 8,
    selector: ({ point, take, sweep, air }) => JSON.stringify([point, take, sweep, air]),
  }),
)

it('gives the same rows again when read, and the same text again when written (seed 11)', () => {
  fc.assert(
    fc.property(rows, (written) => {
      const sheet = writeSweepCsv(written)
      const { rows: back } = readSweepCsv(sheet, 'any name')
      expect(back).toEqual(written)
      expect(writeSweepCsv(back)).toBe(sheet)
    }),
    { seed: 11, numRuns: 400 },
  )
})

it('leaves out the columns that say nothing', () => {
  const { rows: plain } = readSweepCsv('point,along_m,file\n1,0.5,1.wav\n', 'sweep.csv')
  expect(writeSweepCsv(plain)).toBe('point,along_m,file,air\r\n1,0.5,1.wav,on\r\n')
})
