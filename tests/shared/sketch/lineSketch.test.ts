import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { COVERS, FITTING_KINDS, NOISE_KINDS, type SketchPlace } from '../../../shared/line/line'
import { linePath } from '../../../shared/line/linePath'
import { placeAlong } from '../../../shared/line/placeAlong'
import type { Verdict } from '../../../shared/locate/answer'
import type { DrawCommand, DrawPolygon } from '../../../shared/sketch/drawList'
import { lineSketch, type SketchOf } from '../../../shared/sketch/lineSketch'
import { sketchBounds } from '../../../shared/sketch/sketchBounds'
import { WORDS } from '../../../shared/words/words'
import { close } from '../../support/close'
import { answerOf, BENT, bareLine, pointsAt, sourceAt } from './sketches'

const PAST_1 = { key: 'tape_past_point', values: { distance_m: 0.5, point: 1, toward: 2 } }

function sketch(of: Partial<SketchOf> = {}): DrawCommand[] {
  return lineSketch({
    line: bareLine(),
    points: pointsAt([0, 2, 4]),
    answer: null,
    chosenPoint: null,
    isConfirmed: false,
    pxPerM: 50,
    ...of,
  })
}

function located(verdict: Verdict = 'located') {
  const points = pointsAt([0, 2, 4])
  const sources = verdict === 'no leak heard' ? [] : [sourceAt(3, [2.5, 3.5], PAST_1)]
  return { points, answer: answerOf(points, verdict, sources) }
}

const bandOf = (commands: readonly DrawCommand[]) =>
  commands.filter((command): command is DrawPolygon => command.kind === 'polygon' && command.ink === 'likelihood')

/** Width of the band on each place of a straight line along x, from its outline. */
function widths(band: readonly DrawPolygon[]): Map<number, number> {
  const found = new Map<number, number>()
  for (const { places } of band) {
    for (const { xM, yM } of places) found.set(xM, Math.max(found.get(xM) ?? 0, 2 * Math.abs(yM)))
  }
  return found
}

const placesOf = (command: DrawCommand): readonly SketchPlace[] => ('places' in command ? command.places : [command.at])

describe('the sketch of a line', () => {
  it('has a band as wide as the density is high, everywhere by one factor', () => {
    const { answer, points } = located()
    const wide = widths(bandOf(sketch({ answer, points })))
    expect(wide.size).toBeGreaterThan(15)
    for (const [alongM, width] of wide) {
      const because = '15 px to each side at density 1, the highest here, at 50 px a metre'
      close(width, (30 / 50) * Math.max(0, 1 - Math.abs(alongM - 3)), { abs: 1e-12, because })
    }
  })

  it('does not name the start beside the air inlet, whose name it would seem', () => {
    const named = (airInletM: number, pxPerM: number) =>
      sketch({ line: bareLine({ airInletM }), pxPerM }).some(({ id }) => id === 'start-name')
    expect(named(-1.2, 50)).toBe(false)
    expect(named(-1.2, 100)).toBe(true)
    expect(named(3, 50)).toBe(true)
  })

  it('draws the tape only where it is long enough to be seen for one', () => {
    const { answer, points } = located()
    const taped = (pxPerM: number) => sketch({ answer, points, pxPerM }).some(({ id }) => id === 'tape')
    expect(taped(6)).toBe(false) // the source lies 3 m past the point it is measured from
    expect(taped(7)).toBe(true)
  })

  it('has a darker band where it is wider', () => {
    const { answer, points } = located()
    const [pale, ...darker] = bandOf(sketch({ answer, points })).slice(0, 8)
    expect(darker.length).toBe(7)
    darker.reduce((before, piece) => {
      expect(piece.strength).toBeGreaterThan(before.strength)
      return piece
    }, pale!)
  })

  it('has a thin band for little likelihood, instead of stretching it to full width', () => {
    const { answer, points } = located()
    const tenth = { ...answer.density, perM: answer.density.perM.map((perM) => perM / 10) }
    const wide = widths(bandOf(sketch({ answer: { ...answer, density: tenth }, points })))
    const because = 'full width needs half of the probability within the spacing of 2 m: 0.25 a metre'
    close(Math.max(...wide.values()), (30 / 50) * (0.1 / 0.25), { rel: 1e-12, because })
  })

  it('is the same from the other end: the band of a mirrored density is the mirrored band', () => {
    const { answer, points } = located()
    const { alongM, perM } = answer.density
    const mirrored = { alongM, perM: [...perM].reverse() }
    const one = widths(bandOf(sketch({ answer, points })))
    const other = widths(bandOf(sketch({ answer: { ...answer, density: mirrored }, points })))
    for (const [at, width] of one) {
      const twin = [...other].find(([otherAt]) => Math.abs(otherAt - (10 - at)) < 1e-9)
      close(twin?.[1] ?? Number.NaN, width, { abs: 1e-12, because: 'the same densities, told backwards' })
    }
  })

  it('has each peg at its place along and beside the line, over its bends', () => {
    const line = bareLine({ vertices: BENT })
    const points = [0, 4, 5.5, 9].map((alongM, i) => ({ point: i + 1, alongM, offsetM: i - 1, isHeard: true }))
    const pegs = sketch({ line, points }).filter((command) => command.kind === 'peg')
    expect(pegs.map(({ at }) => at)).toEqual(
      points.map(({ alongM, offsetM }) => placeAlong(linePath(line), alongM, offsetM)),
    )
  })

  it('draws the pipe through every corner, to scale', () => {
    const pipe = sketch({ line: bareLine({ vertices: BENT }) }).find(({ id }) => id === 'pipe')!
    expect(placesOf(pipe)).toEqual(BENT)
  })

  it('keeps ground as broad in a bend as beside it, and within itself', () => {
    const stretches = [{ fromM: 0, toM: 10, cover: 'grass', depthM: null, digCostPerM: null } as const]
    const ground = sketch({ line: bareLine({ vertices: BENT, stretches }) }).find(({ id }) => id === 'ground-0')!
    const half = 36 / 50
    for (const [xM, yM] of [
      [4 + half, -half],
      [4 - half, half],
      [4 - half, 3 + half],
      [4 + half, 3 - half],
    ] as const) {
      const away = Math.min(...placesOf(ground).map((place) => Math.hypot(place.xM - xM, place.yM - yM)))
      expect(away).toBeLessThan(half / 2)
    }
    const far = placesOf(ground).filter(({ xM, yM }) => distanceTo(BENT, xM, yM) > half * Math.SQRT2 + 1e-9)
    expect(far).toEqual([])
  })

  it('tells located, unsure and no leak heard apart by pattern and in words', () => {
    const told = (['located', 'unsure', 'no leak heard'] as const).map((verdict) => {
      const commands = sketch(located(verdict))
      const [piece] = bandOf(commands)
      const source = commands.find(({ id }) => id === 'source-0')?.label?.key ?? null
      return { hatch: piece!.hatch, words: piece!.label!.key, source }
    })
    expect(told).toEqual([
      { hatch: 'none', words: 'sketch_band', source: 'sketch_source' },
      { hatch: 'lines', words: 'sketch_band', source: 'sketch_source_unsure' },
      { hatch: 'cross', words: 'sketch_band_little', source: null },
    ])
  })

  it('marks no best peg when no leak was heard', () => {
    const states = (verdict: Verdict) =>
      sketch(located(verdict)).flatMap((command) => (command.kind === 'peg' ? [command.state] : []))
    expect(states('located')).toEqual(['best', 'plain', 'plain'])
    expect(states('no leak heard')).toEqual(['plain', 'plain', 'plain'])
  })

  it('says in its list that a source is inferred until somebody has confirmed it', () => {
    const of = located()
    const mark = (isConfirmed: boolean) => sketch({ ...of, isConfirmed }).find(({ id }) => id === 'source-0')!
    expect(mark(false).certainty).toBe('inferred')
    expect(mark(true).certainty).toBe('measured')
  })

  it('draws two sources with a window each', () => {
    const { answer, points } = located()
    const sources = [...answer.sources, sourceAt(8, [7, 9], PAST_1)]
    const ids = sketch({ answer: { ...answer, sources }, points }).map(({ id }) => id)
    for (const id of ['source-0', 'window-0', 'source-1', 'window-1']) expect(ids).toContain(id)
  })

  it('has words for every cover, fitting and noise, and for every text', () => {
    const line = bareLine({
      airInletM: -1,
      stretches: COVERS.map((cover, i) => ({ fromM: i, toM: i + 1, cover, depthM: null, digCostPerM: null })),
      fittings: FITTING_KINDS.map((kind, atM) => ({ kind, atM })),
      noises: NOISE_KINDS.map((kind, atM) => ({ kind, atM })),
    })
    const points = [-1, 0, 1].flatMap((offsetM, i) =>
      [true, false].map((isHeard, j) => ({ point: 2 * i + j, alongM: i, offsetM, isHeard })),
    )
    const { answer } = located()
    const listenNext = [{ alongM: 1, offsetM: 0.5, expectedWindowM: 1 }]
    const commands = sketch({ line, points, answer: { ...answerOf(points, 'unsure', answer.sources), listenNext } })
    const keys = commands.flatMap((command) => [
      ...(command.label === null ? [] : [command.label.key]),
      ...(command.kind === 'text' ? [command.text.key] : []),
    ])
    expect(new Set(keys).size).toBeGreaterThan(35)
    expect(keys.filter((key) => !Object.hasOwn(WORDS, key))).toEqual([])
  })

  it('gives nothing for a line of which nothing is known', () => {
    expect(sketch({ line: bareLine({ lengthM: null }), points: [] })).toEqual([])
    expect(sketchBounds([])).toBeNull()
  })

  it('draws a line without a length and with one point round that point', () => {
    const commands = sketch({ line: bareLine({ lengthM: null }), points: pointsAt([7]) })
    expect(placesOf(commands.find(({ id }) => id === 'pipe')!)).toEqual([
      { xM: 6.5, yM: 0 },
      { xM: 7.5, yM: 0 },
    ])
  })

  it('never holds a number that is not finite, nor two things of one id (seed 7)', () => {
    const odd = fc.oneof(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.constantFrom(0, -0, 1e6, Number.NaN, Number.POSITIVE_INFINITY),
    )
    const corner = fc.record({ xM: fc.constantFrom(0, 0, 1, 5), yM: fc.constantFrom(0, 0, 2, -3) })
    const place = fc.tuple(odd, odd, fc.array(odd, { maxLength: 6 }))
    const run = fc.property(
      fc.array(corner, { minLength: 1, maxLength: 6 }),
      fc.array(place, { maxLength: 6 }),
      odd,
      (vertices, told, at) => {
        const points = told.map(([alongM, offsetM], i) => ({ point: i, alongM, offsetM, isHeard: true }))
        const source = sourceAt(at, [at - 1, at + 1], {
          key: 'tape_past_point',
          values: { distance_m: 1, point: 0, toward: 1 },
        })
        const answer = {
          ...answerOf(points, 'unsure', [source]),
          listenNext: [{ alongM: at, offsetM: at, expectedWindowM: 1 }],
        }
        const perM = told.flatMap(([, , values]) => values)
        const density = { alongM: perM.map((_, i) => i), perM }
        const line = bareLine({ vertices, lengthM: null, airInletM: at, noises: [{ atM: at, kind: 'pump' }] })
        const commands = sketch({ line, points, answer: { ...answer, density } })
        for (const command of commands) {
          for (const { xM, yM } of placesOf(command)) expect(Number.isFinite(xM) && Number.isFinite(yM)).toBe(true)
        }
        const ids = commands.map(({ id }) => id)
        expect(new Set(ids).size).toBe(ids.length)
      },
    )
    fc.assert(run, { seed: 7, numRuns: 300 })
  })
})

/** Straight distance from a place to the nearest of the legs, m. */
function distanceTo(corners: readonly SketchPlace[], xM: number, yM: number): number {
  return Math.min(
    ...corners.slice(1).map((to, i) => {
      const from = corners[i]!
      const [dx, dy] = [to.xM - from.xM, to.yM - from.yM]
      const share = Math.min(1, Math.max(0, ((xM - from.xM) * dx + (yM - from.yM) * dy) / (dx * dx + dy * dy)))
      return Math.hypot(xM - from.xM - share * dx, yM - from.yM - share * dy)
    }),
  )
}
