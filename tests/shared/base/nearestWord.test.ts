import { expect, it } from 'vitest'
import { nearestWord } from '../../../shared/base/nearestWord'

const KNOWN = ['length_m', 'depth_m', 'pipe', 'note']

it('finds the word a slip of the finger was meant to be', () => {
  expect(nearestWord('lenght_m', KNOWN)).toBe('length_m')
  expect(nearestWord('Depth_M', KNOWN)).toBe('depth_m')
  expect(nearestWord('pip', KNOWN)).toBe('pipe')
})

it('finds nothing for a word that is known, far from all, or longer than any word', () => {
  expect(nearestWord('pipe', KNOWN)).toBeNull()
  expect(nearestWord('gardener', KNOWN)).toBeNull()
  expect(nearestWord('pipe'.repeat(20), KNOWN)).toBeNull()
})
