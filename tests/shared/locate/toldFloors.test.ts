import { expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import type { SettingDown } from '../../../shared/locate/settingDown'
import { toldFloors } from '../../../shared/locate/toldFloors'
import { close } from '../../support/close'

const BANDS = 3
const POINTS = 20

it('takes the floor from the air-off clip of the setting-down where floors differ by place alone (rule 2)', () => {
  const random = new Random(1)
  const settings = Array.from({ length: POINTS }, () => {
    const db = random.normal(-70, 6)
    return settingDown(db, db)
  })
  const { toldFloorDb, toldSdDb } = toldFloors(settings, BANDS)
  for (const [k, told] of toldFloorDb.entries()) {
    close(told?.levelDb[1], settings[k]!.off!.levelDb[1]!, {
      abs: 0.2,
      because: 'repeatability is held to 0.25 dB at least',
    })
  }
  expect(toldSdDb[1]).toBeLessThan(1)
})

it('draws it to the middle of all where floors wander in time alone, and trusts it less (rule 2)', () => {
  const random = new Random(2)
  const settings = Array.from({ length: POINTS }, () => settingDown(random.normal(-70, 6), random.normal(-70, 6)))
  const { toldFloorDb, toldSdDb } = toldFloors(settings, BANDS)
  const told = toldFloorDb.map((floor) => floor!.levelDb[1]!)
  const off = settings.map((setting) => setting.off!.levelDb[1]!)
  expect(Math.max(...told) - Math.min(...told)).toBeLessThan(0.5 * (Math.max(...off) - Math.min(...off)))
  expect(toldSdDb[1]).toBeGreaterThan(3)
})

it('tells none without an air-off clip (rule 2)', () => {
  const settings = [{ ...settingDown(-60, -70), off: null }, settingDown(-60, -70)]
  expect(toldFloors(settings, BANDS).toldFloorDb.map((floor) => floor === null)).toEqual([true, false])
})

/** The same level in all bands. */
function settingDown(onDb: number, offDb: number): SettingDown {
  const row = (db: number) => ({
    levelDb: new Float64Array(BANDS).fill(db),
    weight: new Float64Array(BANDS).fill(1),
  })
  return {
    point: 1,
    alongM: 0,
    offsetM: 0,
    cover: 'soil',
    stretch: -1,
    sweepIndex: 0,
    walk: 0,
    on: row(onDb),
    off: row(offDb),
    rings: null,
    detectedNepers: null,
  }
}
