import { describe, expect, it } from 'vitest'
import { digDimensions } from '../../../shared/job/digDimensions'
import { NO_DIGGING } from '../../../shared/job/digging'
import { digPlan } from '../../../shared/job/digPlan'
import { markPlace } from '../../../shared/job/markPlace'
import type { Line, Stretch } from '../../../shared/line/line'
import { linePath } from '../../../shared/line/linePath'
import type { Source } from '../../../shared/locate/answer'
import { close } from '../../support/close'
import { NO_LINE } from '../../support/idealSweep'

const PATH = linePath({
  vertices: [
    { xM: 0, yM: 0 },
    { xM: 10, yM: 0 },
  ],
})
const EXACT = { abs: 1e-9, because: 'rounding' }

describe('a fixed mark', () => {
  const tapes = [
    { alongM: 0, distanceM: 3 },
    { alongM: 5, distanceM: 4 },
  ] as const

  it('is where its two tapes meet, on the side on which it was put', () => {
    const put = (yM: number) => markPlace(PATH, { id: 'a', name: 'A', place: { xM: 2, yM }, tapes })
    expect(put(9).known).toBe('taped')
    close(put(9).place.yM, 2.4, EXACT)
    close(put(-9).place.yM, -2.4, EXACT)
    close(put(-9).place.xM, 1.8, EXACT)
  })

  it('stays as it was put without tapes, and where they do not meet says by how much', () => {
    const place = { xM: 2, yM: 1 }
    expect(markPlace(PATH, { id: 'a', name: '', place, tapes: null })).toEqual({ place, known: 'by hand', gapM: null })
    const short = [tapes[0], { alongM: 9, distanceM: 2 }] as const
    expect(markPlace(PATH, { id: 'a', name: '', place, tapes: short })).toEqual({ place, known: 'tapes miss', gapM: 4 })
    const same = [tapes[0], tapes[0]] as const
    expect(markPlace(PATH, { id: 'a', name: '', place, tapes: same }).known).toBe('tapes miss')
  })
})

describe('the dimensions of the hole', () => {
  it('are the tapes from both marks to both ends and to the place (triangles of 3, 4, 5)', () => {
    const marks = [
      { xM: 2, yM: 3 },
      { xM: 6, yM: -3 },
    ] as const
    const [from, place, to] = digDimensions(PATH, { alongM: 6, windowM: [2, 10] }, marks)
    close(from!.firstM, 3, EXACT)
    close(from!.secondM, 5, EXACT)
    close(place!.firstM, 5, EXACT)
    close(place!.secondM, 3, EXACT)
    close(to!.secondM, 5, EXACT)
    expect(from!.errorM).toBeGreaterThan(0.039)
  })
})

describe('the plan of opening', () => {
  const stretch = (
    fromM: number,
    toM: number,
    cover: Stretch['cover'],
    cost: number | null,
    min?: number,
  ): Stretch => ({
    fromM,
    toM,
    cover,
    depthM: null,
    digCostPerM: cost,
    ...(min !== undefined && { digMinPerM: min }),
  })
  const line: Line = { ...NO_LINE, stretches: [stretch(0, 5, 'grass', 10, 30), stretch(5, 10, 'slab', 100, 120)] }
  const alongM = Array.from({ length: 101 }, (_, i) => i / 10)
  // 0.2 a metre from 4 to 5 and 0.6 a metre from 5 to 6: the slab is likelier, and ten times as dear.
  const perM = alongM.map((along) => (along >= 4 && along < 5 ? 0.2 : along >= 5 && along <= 6 ? 0.6 : 0))
  const answer = { sources: [{ windowM: [4, 6] } as unknown as Source], density: { alongM, perM } }

  it('opens the grass first, and says what that is expected to cost and take, and what going round would save', () => {
    const plan = digPlan(line, answer, { ...NO_DIGGING, roundM: 6, roundCostPerM: 12 })
    expect(plan.pieces.map(({ cover, cost, minutes }) => [cover, cost, minutes])).toEqual([
      ['grass', 10, 30],
      ['slab', 100, 120],
    ])
    const [grass, slab] = plan.pieces
    close(plan.expectedCost!, 10 + (1 - grass!.probability) * 100, EXACT)
    close(plan.likeliestFirstCost!, 100 + (1 - slab!.probability) * 10, EXACT)
    close(plan.expectedMin!, 30 + (1 - grass!.probability) * 120, EXACT)
    close(plan.slabLastSaves!, plan.likeliestFirstCost! - plan.expectedCost!, EXACT)
    expect(plan.round?.cost).toBe(72)
    close(plan.round!.saves, plan.expectedCost! - 72, EXACT)
  })

  it('says nothing of costs that were not told', () => {
    const bare = { ...line, stretches: [stretch(0, 5, 'grass', null), stretch(5, 10, 'slab', 100)] }
    const plan = digPlan(bare, answer, { ...NO_DIGGING, roundM: 6, roundCostPerM: 12 })
    expect(plan).toMatchObject({ expectedCost: null, expectedMin: null, slabLastSaves: null, round: null })
    expect(digPlan({ ...line, stretches: [] }, answer, NO_DIGGING).pieces[0]).toMatchObject({
      stretch: null,
      cover: null,
    })
  })
})
