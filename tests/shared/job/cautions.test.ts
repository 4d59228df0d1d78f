import { expect, it } from 'vitest'
import { METRES_PER_FOOT } from '../../../shared/base/units'
import { WORDS } from '../../../shared/words/words'
import { close } from '../../support/close'

const numbers = (text: string) => [...text.matchAll(/\d+(?:\.\d+)?/g)].map(([number]) => Number(number))

it('the trench that needs protection is no deeper than the 5 feet of the rule [CFR1926]', () => {
  const [metres, feet] = numbers(WORDS.caution_trench.text)
  expect(feet).toBe(5)
  expect(metres).toBeLessThanOrEqual(5 * METRES_PER_FOOT)
  expect(metres).toBeGreaterThan(5 * METRES_PER_FOOT - 0.05)
})

it('what ears stand is the table of the recommended limit [NIOSH98126]', () => {
  const [limitDba, hours, exchangeDb] = numbers(WORDS.caution_ears.text)
  const allowedH = (levelDba: number) => hours! / 2 ** ((levelDba - limitDba!) / exchangeDb!)
  for (const [levelDba, h] of [
    [85, 8],
    [88, 4],
    [91, 2],
    [94, 1],
    [97, 0.5],
    [100, 0.25],
  ] as const) {
    close(allowedH(levelDba), h, { abs: 1e-9, because: 'the table is exact' })
  }
})
