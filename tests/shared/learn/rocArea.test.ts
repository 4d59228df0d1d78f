import { describe, expect, it } from 'vitest'
import { rocArea } from '../../../shared/learn/rocArea'
import reference from '../../reference/learnReference.json'
import { close } from '../../support/close'

/** So many clips of each rating, 1 to 5. */
const rated = (counts: readonly number[]) => counts.flatMap((count, i) => new Array<number>(count).fill(i + 1))

describe('the area under the ROC curve', () => {
  it("is that of Hanley and McNeil's 109 pictures, with their standard error [HanleyMcNeil1982]", () => {
    // Ratings from memory; they give back the published 0.893.
    const [normal, abnormal] = [rated([33, 6, 6, 11, 2]), rated([3, 2, 2, 11, 33])]
    const found = rocArea([...normal, ...abnormal], [...normal.map(() => false), ...abnormal.map(() => true)])
    close(found.area, 0.89317, { abs: 1e-5, because: 'printed digits' })
    close(found.standardError, 0.03249, { abs: 1e-5, because: 'printed digits, exponential Q' })
    expect([found.leaks, found.others]).toEqual([51, 58])
  })

  it('has the standard errors that the formula gives by hand [HanleyMcNeil1982]', () => {
    // Of 20 and 20, 80 % of the pairs the right way round: sixteen leaks above all, four below all.
    const others = Array.from({ length: 20 }, (_, i) => i)
    const leaks = Array.from({ length: 20 }, (_, i) => (i < 16 ? 100 + i : -100 - i))
    const found = rocArea([...others, ...leaks], [...others.map(() => false), ...leaks.map(() => true)])
    close(found.area, 0.8, { abs: 1e-12, because: 'counted' })
    close(found.standardError, 0.071, { abs: 5e-5, because: 'printed digits' })
    close(
      rocArea(
        new Array(20).fill(1),
        others.map((i) => i < 10),
      ).standardError,
      0.1323,
      {
        abs: 5e-5,
        because: 'printed digits',
      },
    )
  })

  it('is what scikit-learn gives', () => {
    const { probability, roc_area } = reference.two_features
    const found = rocArea(
      probability,
      reference.labels.map((label) => label === 1),
    )
    close(found.area, roc_area, { abs: 1e-12, because: 'counting' })
  })

  it('is 0.5 for equal scores, 1 and 0 at the ends, and asks for both classes', () => {
    expect(rocArea([1, 1, 1, 1], [true, false, true, false]).area).toBe(0.5)
    expect(rocArea([1, 2, 3, 4], [false, false, true, true]).area).toBe(1)
    expect(rocArea([1, 2, 3, 4], [true, true, false, false]).area).toBe(0)
    expect(() => rocArea([1, 2], [true, true])).toThrow(/one class only/)
  })
})
