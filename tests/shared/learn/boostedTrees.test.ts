import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { boostedTrees, type Tree, treeOdds } from '../../../shared/learn/boostedTrees'
import { rocArea } from '../../../shared/learn/rocArea'
import reference from '../../reference/learnReference.json'
import { close } from '../../support/close'

const oddsOf = (trees: readonly Tree[], start: number, row: Float64Array) =>
  trees.reduce((sum, tree) => sum + treeOdds(tree, row), start)

describe('boosted trees', () => {
  it("give the odds that scikit-learn's give on Fisher's irises [Fisher1936]", () => {
    const rows = reference.rows.map((row) => Float64Array.from(row))
    const isLeak = reference.labels.map((label) => label === 1)
    const { trees: count, rate, penalty, fewest_rows: fewestRows, odds } = reference.boosted
    // As many of one kind as of the other: even odds before any tree.
    const trees = boostedTrees({ rows, isLeak }, 0, { trees: count, rate, penalty, fewestRows, bins: 255 })
    for (const [i, row] of rows.entries()) {
      close(oddsOf(trees, 0, row), odds[i]!, { abs: 1e-4, because: 'the library reckons slopes in single precision' })
    }
  })

  it('take of one tree the share that is told, of the Newton step in each leaf (closed form)', () => {
    const rows = [-1, -1, 1, 1].map((x) => Float64Array.of(x))
    const how = { trees: 1, rate: 0.5, penalty: 1, fewestRows: 1, bins: 8 }
    const [tree] = boostedTrees({ rows, isLeak: [false, false, true, true] }, 0, how)
    // Slope 2 · 0.5, curvature 2 · 0.25, pull 1.
    close(treeOdds(tree!, [1]), (0.5 * 1) / (0.5 + 1), { abs: 1e-12, because: 'rounding' })
    close(treeOdds(tree!, [-1]), (-0.5 * 1) / (0.5 + 1), { abs: 1e-12, because: 'rounding' })
  })

  it('learn what no line can part: a leak where just one of two is high', () => {
    const random = new Random('either but not both')
    const drawn = () =>
      Array.from({ length: 600 }, () => Float64Array.of(random.normal(), random.normal(), random.normal()))
    const isEither = (row: Float64Array) => row[0]! > 0 !== row[1]! > 0
    const [school, judge] = [drawn(), drawn()]
    const how = { trees: 60, rate: 0.1, penalty: 1, fewestRows: 10, bins: 32 }
    const trees = boostedTrees({ rows: school, isLeak: school.map(isEither) }, 0, how)
    const { area } = rocArea(
      judge.map((row) => oddsOf(trees, 0, row)),
      judge.map(isEither),
    )
    expect(area).toBeGreaterThan(0.97)
  })

  it('ask nothing where there is nothing to ask', () => {
    const rows = Array.from({ length: 20 }, () => Float64Array.of(1))
    const isLeak = rows.map((_, i) => i % 2 === 0)
    const [tree] = boostedTrees({ rows, isLeak }, 0, { trees: 1, rate: 1, penalty: 1, fewestRows: 1, bins: 8 })
    expect(tree!.column).toEqual([-1, -1, -1, -1, -1, -1, -1])
    close(treeOdds(tree!, [7]), 0, { abs: 0, because: 'nothing was learnt' })
  })
})
