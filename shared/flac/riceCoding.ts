import type { BitWriter } from './bitWriter'

/** How a residual is cut and coded. */
export interface RicePlan {
  /** 2^this many partitions. */
  readonly partitionOrder: number
  /** Of each partition. */
  readonly parameters: readonly number[]
  /** Of the whole, its heads included. */
  readonly bits: number
}

const HIGHEST_PARTITION_ORDER = 6
/** Above this a parameter takes five bits instead of four. */
const HIGHEST_SHORT = 14
const HIGHEST_LONG = 30

/**
 * The partitions and parameters with which a residual is shortest, of those tried.
 *
 * @param residual Behind the first `order` samples of a block.
 * @see IETF RFC 9639, section 9.2.7. [RFC9639]
 */
export function ricePlan(residual: Int32Array, blockSize: number, order: number): RicePlan {
  let best: RicePlan | null = null
  for (let partitionOrder = 0; partitionOrder <= HIGHEST_PARTITION_ORDER; partitionOrder++) {
    const size = blockSize / 2 ** partitionOrder
    if (!Number.isInteger(size) || size <= order) break
    const parameters: number[] = []
    let bits = 0
    for (const part of partitions(residual, blockSize, order, partitionOrder)) {
      const coded = bestParameter(part)
      parameters.push(coded.parameter)
      bits += coded.bits
    }
    const head = Math.max(...parameters) > HIGHEST_SHORT ? 5 : 4
    const whole = { partitionOrder, parameters, bits: bits + 6 + head * parameters.length }
    if (best === null || whole.bits < best.bits) best = whole
  }
  return best!
}

export function writeResidual(
  out: BitWriter,
  residual: Int32Array,
  blockSize: number,
  order: number,
  { partitionOrder, parameters }: RicePlan,
): void {
  const isLong = Math.max(...parameters) > HIGHEST_SHORT
  out.write(Number(isLong), 2)
  out.write(partitionOrder, 4)
  for (const [i, part] of partitions(residual, blockSize, order, partitionOrder).entries()) {
    const parameter = parameters[i]!
    out.write(parameter, isLong ? 5 : 4)
    const factor = 2 ** parameter
    for (const value of part) {
      const folded = value >= 0 ? 2 * value : -2 * value - 1
      out.writeUnary(Math.floor(folded / factor))
      out.write(folded % factor, parameter)
    }
  }
}

/** The first is shorter by the samples that the predictor needs. */
function partitions(residual: Int32Array, blockSize: number, order: number, partitionOrder: number): Int32Array[] {
  const size = blockSize / 2 ** partitionOrder
  return Array.from({ length: 2 ** partitionOrder }, (_, i) =>
    residual.subarray(Math.max(0, i * size - order), (i + 1) * size - order),
  )
}

/** Near the mean the length hardly changes: the parameter by the mean and its neighbours are tried. */
function bestParameter(part: Int32Array): { readonly parameter: number; readonly bits: number } {
  let sum = 0
  for (const value of part) sum += value >= 0 ? 2 * value : -2 * value - 1
  const near = Math.max(0, Math.min(HIGHEST_LONG, Math.round(Math.log2(Math.max(1, sum / Math.max(1, part.length))))))
  let best = { parameter: near, bits: Number.POSITIVE_INFINITY }
  for (let parameter = Math.max(0, near - 1); parameter <= Math.min(HIGHEST_LONG, near + 1); parameter++) {
    const factor = 2 ** parameter
    let bits = part.length * (1 + parameter)
    for (const value of part) bits += Math.floor((value >= 0 ? 2 * value : -2 * value - 1) / factor)
    if (bits < best.bits) best = { parameter, bits }
  }
  return best
}
