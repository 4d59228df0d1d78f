import { expect, it } from 'vitest'
import { groundPrior } from '../../../shared/ground/groundPrior'
import { fitModel } from '../../../shared/locate/fitModel'
import { fitSources } from '../../../shared/locate/fitSources'
import { OWN, OWN_AT } from '../../../shared/locate/normalEquations'
import { settingsDown, weighedBands } from '../../../shared/locate/settingsDown'
import { close } from '../../support/close'
import { idealSweep } from '../../support/idealSweep'

it('takes what all bands changed by since the air-off clip for a change of the floor there (rule 2)', () => {
  const changeDb = (alongM: number) => (alongM === 4 ? 0.8 : 0)
  const placeDb = (alongM: number) => 6 * Math.sin(3 * alongM)
  const quiet = { count: 9, spacingM: 1, depthM: 0.5, leakAlongM: null, overFloorDb: 0, air: ['on', 'off'] as const }
  const { line, soundings } = idealSweep({ ...quiet, floorRiseDb: placeDb, scatterDb: 0.2 })
  const changed = idealSweep({ ...quiet, floorRiseDb: (x) => placeDb(x) + changeDb(x), scatterDb: 0.2 }).soundings
  const heard = soundings.map((each, i) => (each.row.air === 'on' ? changed[i]! : each))
  const settings = settingsDown(heard, line, ['1'])
  const bandHz = weighedBands(heard[0]!.evidence!).map(({ midHz }) => midHz)
  const fit = fitSources(fitModel(settings, bandHz, 1), [], groundPrior('soil', true), 'with pipe')
  for (const [k, { alongM }] of settings.entries())
    close(fit.own[k * OWN + OWN_AT.floorChange], changeDb(alongM), {
      abs: 0.2,
      because: 'fourteen bands that scatter by 0.2 dB, and a prior of 0.6 dB that pulls a little',
    })
  expect(settings).toHaveLength(9)
})
