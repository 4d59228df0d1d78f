import { quantileOfSorted } from '../base/statistics'
import { type LabelledRows, probabilityOf } from './logisticRegression'

/** Questions one after the other: at most three from the root to a leaf, so that at most three features speak together. */
const TREE_DEPTH = 3
export const TREE_SPLITS = 2 ** TREE_DEPTH - 1
const LEAVES = 2 ** TREE_DEPTH

/** One tree: node n has the nodes 2n + 1 (at most `limit`) and 2n + 2 (above) below it; the leaves follow the seven splits. */
export interface Tree {
  /** Of each of seven splits, the column asked; −1: everything goes to the left. */
  readonly column: readonly number[]
  readonly limit: readonly number[]
  /** What each of eight leaves adds to ln of the odds. */
  readonly odds: readonly number[]
}

export interface Boosting {
  readonly trees: number
  /** How much of each tree is taken, 0 to 1. */
  readonly rate: number
  /** Pull of the leaves to 0, as of `logisticRegression`. */
  readonly penalty: number
  /** No leaf holds fewer rows. */
  readonly fewestRows: number
  /** Values of a column are put into so many bins at most. */
  readonly bins: number
}

/**
 * Boosted trees for ln of the odds: each next tree is fitted to what the ones before left, by slope and curvature of the
 * logistic cost.
 *
 * @param start ln of the odds before any tree.
 * @see Friedman 2001, with the second-order gain of Chen & Guestrin 2016. [Friedman2001] [ChenGuestrin2016]
 */
export function boostedTrees({ rows, isLeak, weights }: LabelledRows, start: number, how: Boosting): Tree[] {
  const table = binned(rows, how.bins)
  const odds = new Float64Array(rows.length).fill(start)
  const slope = new Float64Array(rows.length)
  const curve = new Float64Array(rows.length)
  return Array.from({ length: how.trees }, () => {
    for (let r = 0; r < rows.length; r++) {
      const p = probabilityOf(odds[r]!)
      const weight = weights?.[r] ?? 1
      slope[r] = weight * (p - (isLeak[r] ? 1 : 0))
      curve[r] = weight * p * (1 - p)
    }
    const tree = growTree(table, slope, curve, how)
    for (let r = 0; r < rows.length; r++) odds[r]! += treeOdds(tree, rows[r]!)
    return tree
  })
}

/** What a tree adds to ln of the odds of a row. */
export function treeOdds({ column, limit, odds }: Tree, row: ArrayLike<number>): number {
  let node = 0
  while (node < TREE_SPLITS) node = 2 * node + (column[node]! >= 0 && row[column[node]!]! > limit[node]! ? 2 : 1)
  return odds[node - TREE_SPLITS]!
}

interface Binned {
  /** Of each column, the limits between its bins, rising. */
  readonly limits: readonly Float64Array[]
  /** Of each column, the bin of each row. */
  readonly bins: readonly Uint8Array[]
}

function binned(rows: readonly Float64Array[], most: number): Binned {
  const columns = rows[0]?.length ?? 0
  const limits = Array.from({ length: columns }, (_, c) =>
    limitsOf(
      Float64Array.from(rows, (row) => row[c]!),
      most,
    ),
  )
  const bins = limits.map((of, c) =>
    Uint8Array.from(rows, (row) => {
      let bin = 0
      while (bin < of.length && row[c]! > of[bin]!) bin++
      return bin
    }),
  )
  return { limits, bins }
}

/** Midway between values; where there are more values than bins, at even quantiles. */
function limitsOf(values: Float64Array, most: number): Float64Array {
  const sorted = values.sort()
  const distinct = [...new Set(sorted)]
  if (distinct.length <= most) return Float64Array.from(distinct.slice(1), (value, i) => (value + distinct[i]!) / 2)
  return Float64Array.from(
    new Set(Array.from({ length: most - 1 }, (_, i) => quantileOfSorted(sorted, (i + 1) / most))),
  )
}

function growTree(table: Binned, slope: Float64Array, curve: Float64Array, how: Boosting): Tree {
  const column = new Array<number>(TREE_SPLITS).fill(-1)
  const limit = new Array<number>(TREE_SPLITS).fill(0)
  let held: Uint32Array[] = [Uint32Array.from(slope, (_, r) => r)]
  for (let depth = 0; depth < TREE_DEPTH; depth++) {
    held = held.flatMap((rows, i) => {
      const node = 2 ** depth - 1 + i
      const split = bestSplit(table, rows, { slope, curve }, how)
      if (split === null) return [rows, new Uint32Array(0)]
      column[node] = split.column
      limit[node] = table.limits[split.column]![split.bin]!
      const bins = table.bins[split.column]!
      return [rows.filter((r) => bins[r]! <= split.bin), rows.filter((r) => bins[r]! > split.bin)]
    })
  }
  const leafOdds = (rows: Uint32Array) => (-how.rate * sumOver(slope, rows)) / (sumOver(curve, rows) + how.penalty)
  return { column, limit, odds: held.slice(0, LEAVES).map((rows) => (rows.length === 0 ? 0 : leafOdds(rows))) }
}

function sumOver(values: Float64Array, rows: Uint32Array): number {
  let sum = 0
  for (const r of rows) sum += values[r]!
  return sum
}

/** The question that lowers the cost most; `null` where none does. */
function bestSplit(
  { limits, bins }: Binned,
  rows: Uint32Array,
  { slope, curve }: { slope: Float64Array; curve: Float64Array },
  { penalty, fewestRows }: Boosting,
): { column: number; bin: number } | null {
  if (rows.length < 2 * fewestRows) return null
  const [allSlope, allCurve] = [sumOver(slope, rows), sumOver(curve, rows)]
  const worth = (g: number, h: number) => (g * g) / (h + penalty)
  let best: { column: number; bin: number } | null = null
  let most = worth(allSlope, allCurve) + 1e-9
  const [slopes, curves, counts] = [new Float64Array(256), new Float64Array(256), new Uint32Array(256)]
  for (let c = 0; c < limits.length; c++) {
    const last = limits[c]!.length
    slopes.fill(0, 0, last + 1)
    curves.fill(0, 0, last + 1)
    counts.fill(0, 0, last + 1)
    const of = bins[c]!
    for (const r of rows) {
      const bin = of[r]!
      slopes[bin]! += slope[r]!
      curves[bin]! += curve[r]!
      counts[bin]!++
    }
    let [g, h, count] = [0, 0, 0]
    for (let bin = 0; bin < last; bin++) {
      g += slopes[bin]!
      h += curves[bin]!
      count += counts[bin]!
      if (count < fewestRows) continue
      if (rows.length - count < fewestRows) break
      const both = worth(g, h) + worth(allSlope - g, allCurve - h)
      if (both > most) {
        most = both
        best = { column: c, bin }
      }
    }
  }
  return best
}
