/**
 * Seeded random numbers: the same seed gives the same numbers on every machine. The state is the only mutable thing.
 *
 * xoshiro128**, seeded through SplitMix32-style mixing. Never for secrets.
 *
 * @see Blackman & Vigna 2021, "Scrambled linear pseudorandom number generators". [BlackmanVigna2021] in sources.ts
 */
export class Random {
  private readonly state: Uint32Array
  private spareNormal: number | null = null

  /** @param seed Any whole number or text. */
  constructor(seed: number | string) {
    let mix = typeof seed === 'number' ? seed >>> 0 : hashText(seed)
    this.state = Uint32Array.from({ length: 4 }, () => {
      mix = (mix + 0x9e3779b9) >>> 0
      let z = mix
      z = Math.imul(z ^ (z >>> 16), 0x21f0aaad)
      z = Math.imul(z ^ (z >>> 15), 0x735a2d97)
      return (z ^ (z >>> 15)) >>> 0
    })
  }

  /** A stream of its own, independent of how much was drawn from this one: same parent seed and name, same numbers. */
  static named(seed: number | string, name: string): Random {
    return new Random(`${seed}/${name}`)
  }

  /** Whole number, 0 to 2³² − 1. */
  uint32(): number {
    const s = this.state
    const product = Math.imul(s[1]!, 5)
    const result = Math.imul((product << 7) | (product >>> 25), 9) >>> 0
    const t = s[1]! << 9
    s[2]! ^= s[0]!
    s[3]! ^= s[1]!
    s[1]! ^= s[2]!
    s[0]! ^= s[3]!
    s[2]! ^= t
    s[3] = (s[3]! << 11) | (s[3]! >>> 21)
    return result
  }

  /** Uniform from `low` (included) to `high` (excluded); 0 to 1 unless said. 32 bits of resolution. */
  uniform(low = 0, high = 1): number {
    return low + (high - low) * (this.uint32() / 4294967296)
  }

  /** Log-uniform from `low` to `high`, both > 0. */
  logUniform(low: number, high: number): number {
    return Math.exp(this.uniform(Math.log(low), Math.log(high)))
  }

  /** Normal by Box and Muller's polar-free form. */
  normal(centre = 0, sd = 1): number {
    if (this.spareNormal !== null) {
      const spare = this.spareNormal
      this.spareNormal = null
      return centre + sd * spare
    }
    const radius = Math.sqrt(-2 * Math.log(1 - this.uniform()))
    const angle = 2 * Math.PI * this.uniform()
    this.spareNormal = radius * Math.sin(angle)
    return centre + sd * radius * Math.cos(angle)
  }

  /** Waiting time of a Poisson stream, in the inverse unit of `rate`. */
  exponential(rate: number): number {
    return -Math.log(1 - this.uniform()) / rate
  }

  /** Whole number from `low` to `high`, both included. */
  integer(low: number, high: number): number {
    return low + Math.floor(this.uniform() * (high - low + 1))
  }

  /** True with this probability. */
  chance(probability: number): boolean {
    return this.uniform() < probability
  }

  /** One of the choices. */
  pick<T>(choices: readonly T[]): T {
    return choices[this.integer(0, choices.length - 1)]!
  }

  /** A new array in random order (Fisher and Yates). */
  shuffled<T>(items: readonly T[]): T[] {
    const result = [...items]
    for (let i = result.length - 1; i > 0; i--) {
      const j = this.integer(0, i)
      ;[result[i], result[j]] = [result[j]!, result[i]!]
    }
    return result
  }
}

/** FNV-1a over UTF-16 code units, 32 bits. */
function hashText(text: string): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  return hash >>> 0
}
