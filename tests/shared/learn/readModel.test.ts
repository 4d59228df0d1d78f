import { describe, expect, it } from 'vitest'
import { FormatError } from '../../../shared/base/errors'
import { modelJson } from '../../../shared/learn/modelJson'
import { readModel } from '../../../shared/learn/readModel'
import { train } from '../../../shared/learn/train'
import { inventedExamples, ORDER } from './examples'

const model = train(inventedExamples(6, 20), ORDER)
const text = modelJson(model)

/** The file with another value at a place, given as its keys. */
function changed(keys: readonly (string | number)[], value: unknown): string {
  const file: unknown = JSON.parse(text)
  const last = keys[keys.length - 1]!
  const inside = keys.slice(0, -1).reduce((part, key) => (part as Record<string | number, unknown>)[key], file)
  ;(inside as Record<string | number, unknown>)[last] = value
  return JSON.stringify(file)
}

describe('a model file', () => {
  it('comes back as it was', () => {
    expect(readModel(text, 'ours.json')).toEqual(model)
  })

  it('is refused in clear words when it is something else, newer, of another list, or hostile', () => {
    const refused = (bad: string) => {
      try {
        readModel(bad, 'bad.json')
      } catch (error) {
        expect(error).toBeInstanceOf(FormatError)
        return (error as Error).message
      }
      return 'read'
    }
    expect(refused('{}')).toMatch('format: is not that of a detector')
    expect(refused(changed(['version'], 2))).toMatch('is 2, and this program reads up to 1; update it')
    expect(refused(changed(['features'], JSON.parse(text).features.slice(1)))).toMatch('train the detector anew')
    expect(refused(changed(['features', 3, 'id'], 'loudness'))).toMatch('features[3]: has "loudness"')
    expect(refused(changed(['features', 3, 'sd'], 0))).toMatch('features[3].sd')
    expect(refused(changed(['intercept'], 1e300))).toMatch('intercept')
    expect(refused(changed(['calibration', 'slope'], -1))).toMatch('calibration.slope')
    expect(refused(changed(['card', 'data'], 'x'.repeat(5000)))).toMatch('at most 4000')
    expect(refused(changed(['evaluations', 0, 'area', 'area'], 2))).toMatch('evaluations[0].area.area')
    expect(refused(changed(['evaluations', 0, 'keptApart'], '<b>'))).toMatch('write job or device')
    expect(refused(changed(['heard', 2], 'xyz'))).toMatch('heard[2]: is "xyz"; 12 hexadecimal digits')
    expect(refused(text.replace('"penalty": ', '"penalty": 1e999, "was": '))).toMatch('bad.json')
    expect(refused(`${'['.repeat(100_000)}`)).toMatch('bad.json')
  })
})
