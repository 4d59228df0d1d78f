import { expect, it } from 'vitest'
import { drawYard } from '../../../shared/synth/drawYard'
import { FAMILIES } from '../../../shared/synth/families'
import { leakOverFloorDb } from '../../../shared/synth/leakOverFloor'
import { SCHOOL_FAMILIES } from '../../../shared/synth/schoolFamilies'
import { close } from '../../support/close'

it('has no yard in common with the families that judge places', () => {
  const names = FAMILIES.map(({ name }) => name)
  expect(SCHOOL_FAMILIES.filter(({ name }) => names.includes(name))).toEqual([])
  const same = (a: object, b: object) => JSON.stringify({ ...a, name: '' }) === JSON.stringify({ ...b, name: '' })
  expect(SCHOOL_FAMILIES.filter((school) => FAMILIES.some((family) => same(school, family)))).toEqual([])
})

it('draws yards of every family, some with a leak and some without', () => {
  const leaks = SCHOOL_FAMILIES.map((family) => drawYard(family, 'one').truth.leakAlongM.length)
  expect([...new Set(leaks)].sort()).toEqual([0, 1])
})

it('tells how far the leak stands over the floor: what was asked for at its nearest point, nothing with the air off', () => {
  const yard = drawYard(SCHOOL_FAMILIES[0]!, 'two')
  const leakM = yard.truth.leakAlongM[0]!
  const on = yard.clips.filter(({ row }) => row.air === 'on')
  const nearest = on.reduce((a, b) => (Math.abs(b.spot.alongM - leakM) < Math.abs(a.spot.alongM - leakM) ? b : a))
  close(leakOverFloorDb(yard, nearest), yard.truth.overFloorDb[0]!, {
    abs: 0.2,
    because: 'the best band at its middle, and the air that comes and goes',
  })
  expect(leakOverFloorDb(yard, { ...nearest, row: { ...nearest.row, air: 'off' } })).toBeNull()
  expect(leakOverFloorDb(drawYard(SCHOOL_FAMILIES[4]!, 'two'), nearest)).toBeNull()
})
