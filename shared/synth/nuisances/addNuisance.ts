import type { Parts } from '../clipSounds'
import type { Nuisance } from '../yard'
import { addFootsteps } from './footsteps'
import { addKnocks, addStrokes } from './knocks'
import type { NuisanceClip } from './nuisanceClip'
import { addBirds, addVoices } from './voices'
import { addGusts, addRain, addTraffic } from './weather'

const ADDERS: Readonly<Record<Nuisance, (parts: Parts, clip: NuisanceClip) => void>> = {
  footsteps: addFootsteps,
  knocks: addKnocks,
  strokes: addStrokes,
  gusts: addGusts,
  traffic: addTraffic,
  rain: addRain,
  voices: addVoices,
  birds: addBirds,
}

/** Adds the sounds of one nuisance to the parts of a clip. */
export function addNuisance(parts: Parts, nuisance: Nuisance, clip: NuisanceClip): void {
  ADDERS[nuisance](parts, clip)
}
