import type { RuledOut, WaterPasses } from '../job/complaint'
import type { FoundCause, FoundWay } from '../job/found'
import type { Confirmation } from '../job/job'
import type { Cover } from '../line/line'
import type { Adhesive } from '../pressure/cureTimes'
import type { FittingCheck, FittingMeans } from '../pressure/gaugeLog'
import type { HoldVerdict } from '../pressure/holdVerdicts'

/** Keys of shared/words for everything that is chosen from a list, for screens and report alike. */
export const CHOICE_WORDS = {
  ruledOut: {
    pump: 'label_ruled_pump',
    valves: 'label_ruled_valves',
    fittings: 'label_ruled_fittings',
    basin: 'label_ruled_basin',
    'other lines': 'label_ruled_lines',
  },
  waterPasses: { freely: 'label_passes_freely', poorly: 'label_passes_poorly', 'not at all': 'label_passes_not' },
  foundWay: { opened: 'label_way_opened', 'by eye': 'label_way_eye', 'by ear': 'label_way_ear' },
  foundCause: {
    root: 'label_cause_root',
    stone: 'label_cause_stone',
    crushed: 'label_cause_crushed',
    joint: 'label_cause_joint',
    fitting: 'label_cause_fitting',
    frost: 'label_cause_frost',
    'drill or stake': 'label_cause_drill',
    age: 'label_cause_age',
    other: 'label_cause_other',
    'not seen': 'label_cause_unseen',
  },
  adhesive: {
    'two-part wet': 'label_adhesive_two',
    'solvent cement': 'label_adhesive_cement',
    other: 'label_adhesive_other',
  },
  holdVerdict: {
    holds: 'label_hold_holds',
    drops: 'label_hold_drops',
    'would not come up to pressure': 'label_hold_not_up',
    'cannot tell': 'label_hold_cannot_tell',
  },
  fittingState: { tight: 'label_state_tight', weeping: 'label_state_weeping', 'not checked': 'label_state_unchecked' },
  fittingMeans: {
    'dye under water': 'label_by_dye',
    soap: 'label_by_soap',
    ear: 'label_by_ear',
    other: 'label_by_other',
  },
  cover: {
    grass: 'label_cover_grass',
    soil: 'label_cover_soil',
    gravel: 'label_cover_gravel',
    pavers: 'label_cover_pavers',
    slab: 'label_cover_slab',
    other: 'label_cover_other',
  },
  says: { yes: 'label_says_yes', no: 'label_says_no', 'not sure': 'label_says_unsure' },
} as const satisfies ChoiceLists

interface ChoiceLists {
  readonly ruledOut: Record<RuledOut, string>
  readonly waterPasses: Record<WaterPasses, string>
  readonly foundWay: Record<FoundWay, string>
  readonly foundCause: Record<FoundCause, string>
  readonly adhesive: Record<Adhesive, string>
  readonly holdVerdict: Record<HoldVerdict, string>
  readonly fittingState: Record<FittingCheck['state'], string>
  readonly fittingMeans: Record<FittingMeans, string>
  readonly cover: Record<Cover, string>
  readonly says: Record<Confirmation['says'], string>
}
