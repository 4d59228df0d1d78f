import { stretchAt } from '../../../shared/line/stretchAt'
import { drawYard } from '../../../shared/synth/drawYard'
import { familyNamed } from '../../../shared/synth/families'
import { leakOverFloorDb } from '../../../shared/synth/leakOverFloor'
import { renderClip } from '../../../shared/synth/renderClip'
import { SCHOOL_FAMILIES } from '../../../shared/synth/schoolFamilies'
import { type HeardClip, hearSound } from './hearSound'

/** A yard to be heard. */
export interface YardOrder {
  readonly family: string
  readonly seed: string
}

/** A leak this far over the floor in some band is there to be heard; this far under it in all, it is not, dB. */
const HEARD_DB = 3
const UNHEARD_DB = -10

/**
 * Renders and measures the clips of a yard that are plainly of a leak or plainly not: with the air on at points where the
 * leak stands 3 dB over the floor, or 10 dB under it or there is none. Spoilt clips and those between are left out.
 */
export function hearYard({ family, seed }: YardOrder): HeardClip[] {
  const table = SCHOOL_FAMILIES.find(({ name }) => name === family) ?? familyNamed(family)
  if (table === null) throw new Error(`there is no family ${family}`)
  const yard = drawYard(table, seed)
  return yard.clips.flatMap((plan) => {
    if (plan.spoil !== null || plan.row.air === 'off') return []
    const overDb = leakOverFloorDb(yard, plan) ?? Number.NEGATIVE_INFINITY
    if (overDb > UNHEARD_DB && overDb < HEARD_DB) return []
    const heard = hearSound(renderClip(yard, plan), {
      name: `${yard.seed}/${plan.row.file}`,
      job: yard.seed,
      device: '',
      cover: stretchAt(yard.told, plan.row.alongM)?.cover ?? '',
      isLeak: overDb >= HEARD_DB,
      kind: family,
    })
    return heard === null ? [] : [heard]
  })
}
