import { expect, it } from 'vitest'
import { acrossToSource, distanceToSource } from '../../../shared/line/distanceToSource'
import { linePath } from '../../../shared/line/linePath'
import { close } from '../../support/close'

const ROUNDING = { abs: 1e-12, because: 'rounding' }
const BENT = linePath({
  vertices: [
    { xM: 0, yM: 0 },
    { xM: 10, yM: 0 },
    { xM: 10, yM: 4 },
  ],
}) // prettier to read in one row

it('is the depth right above the source', () => {
  expect(distanceToSource(BENT, { sourceAlongM: 3, depthM: 0.45, listenAlongM: 3, offsetM: 0 })).toBe(0.45)
})

it('is the slant on a straight leg, with the offset', () => {
  const { sourceAlongM, depthM, listenAlongM, offsetM } = { sourceAlongM: 2, depthM: 2, listenAlongM: 3, offsetM: -2 }
  close(distanceToSource(BENT, { sourceAlongM, depthM, listenAlongM, offsetM }), 3, ROUNDING) // √(1 + 4 + 4)
})

it('cuts the corner of a bend', () => {
  close(acrossToSource(BENT, { sourceAlongM: 7, listenAlongM: 14, offsetM: 0 }), 5, ROUNDING) // 3-4-5, not 7
})

it('comes nearer on the inner side of a bend than on the outer one', () => {
  const inner = acrossToSource(BENT, { sourceAlongM: 8, listenAlongM: 12, offsetM: 1 })
  const outer = acrossToSource(BENT, { sourceAlongM: 8, listenAlongM: 12, offsetM: -1 })
  close(inner, Math.hypot(1, 2), ROUNDING)
  close(outer, Math.hypot(3, 2), ROUNDING)
})
