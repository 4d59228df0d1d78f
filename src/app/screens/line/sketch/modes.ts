import type { WordKey } from '../../../../../shared/words/words'
import { GroundTools } from './GroundTools'
import { groundMode } from './groundMode'
import { LegsTools } from './LegsTools'
import { legsMode } from './legsMode'
import { PhotoTools } from './PhotoTools'
import { PointsTools } from './PointsTools'
import type { ModeContext, ModeName, ModeTools, PadMode } from './padMode'
import { photoMode } from './photoMode'
import { pointsMode } from './pointsMode'
import { SignsTools } from './SignsTools'
import { signsMode } from './signsMode'
import { ThingsTools } from './ThingsTools'
import { thingsMode } from './thingsMode'

interface ModeEntry {
  readonly words: Extract<WordKey, `label_mode_${ModeName}`>
  readonly mode: (of: ModeContext) => PadMode
  readonly Tools: ModeTools
}

/** Everything that can be sketched. */
export const MODES: { readonly [Name in ModeName]: ModeEntry } = {
  legs: { words: 'label_mode_legs', mode: legsMode, Tools: LegsTools },
  ground: { words: 'label_mode_ground', mode: groundMode, Tools: GroundTools },
  things: { words: 'label_mode_things', mode: thingsMode, Tools: ThingsTools },
  signs: { words: 'label_mode_signs', mode: signsMode, Tools: SignsTools },
  points: { words: 'label_mode_points', mode: pointsMode, Tools: PointsTools },
  photo: { words: 'label_mode_photo', mode: photoMode, Tools: PhotoTools },
}
