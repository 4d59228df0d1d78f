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
    const bushy = {
      ...model,
      penalty: null,
      trees: [
        { column: [0, 1, -1, 2, 3, -1, -1], limit: [0.5, -1, 0, 0, 0.25, 0, 0], odds: [1, 2, 3, 4, -1, 0, 0, 0] },
      ],
    }
    expect(readModel(modelJson(bushy), 'bushy.json')).toEqual(bushy)
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
    expect(refused(changed(['version'], 3))).toMatch('is 3, and this program reads up to 2; update it')
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
    const tree = { column: [0, -1, 1, 2, 3, 4, 5], limit: [0, 0, 0, 0, 0, 0, 0], odds: [1, 1, 1, 1, 0, 0, 0, 0] }
    const withTree = (part: object) => changed(['trees'], [{ ...tree, ...part }])
    expect(refused(withTree({}))).toBe('read')
    expect(refused(withTree({ column: [0] }))).toMatch('trees[0].column: has 1 numbers; 7 are expected')
    expect(refused(withTree({ column: [0, 1, 2, 3, 4, 5, 1e6] }))).toMatch('trees[0].column[6]: is 1000000')
    expect(refused(withTree({ column: [0, 1, 2, 3, 4, 5, 0.5] }))).toMatch('trees[0].column[6]: is not whole')
    expect(refused(withTree({ odds: [1, 1, 1, 1, 0, 0, 0, '0'] }))).toMatch('trees[0].odds[7]')
    expect(refused(changed(['trees'], new Array(1001).fill(tree)))).toMatch('trees')
    expect(refused(`${'['.repeat(100_000)}`)).toMatch('bad.json')
  })
})
