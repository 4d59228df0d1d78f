/** What a sound is, as far as its name, credits, spectrogram and measures tell. */
export type SoundKind =
  | 'bubbling'
  | 'hiss'
  | 'pump'
  | 'footstep'
  | 'crackle'
  | 'speech'
  | 'wind'
  | 'traffic'
  | 'engine'
  | 'insect'
  | 'click'
  | 'rain'
  | 'knock'
  | 'crowd'
  | 'thunder'
  | 'digging'
  | 'falling-water'

export interface CatalogueSound {
  readonly name: string
  readonly kind: SoundKind
  /** Debian package that holds it. */
  readonly package: string
  /**
   * Files inside the package; `!` steps into an archive. Several files are strokes (steps, clicks) and are laid out
   * in time, one after the other, until there are about eight seconds.
   */
  readonly paths: readonly string[]
  /** For strokes: time from one onset to the next, s (jittered by a tenth, seeded). */
  readonly strokeEveryS: number | null
  /** `short` sounds serve `npm test` (49 MB of packages), `long` ones the benches (169 MB more). */
  readonly set: 'short' | 'long'
  /**
   * The ring finder was tuned on `tune` sounds only; `held` ones judge it. Sounds of one recording, package or voice
   * stay on one side as far as there are enough of a kind.
   */
  readonly part: 'tune' | 'held'
  /** Licence by the package's copyright file, where the credits stand. */
  readonly licence: string
}

interface Shelf {
  readonly package: string
  readonly folder: string
  readonly set: 'short' | 'long'
  readonly licence: string
}

const UFOAI: Shelf = {
  package: 'ufoai-sound',
  folder: 'usr/share/games/ufoai/base/0snd.pk3!sound/',
  set: 'short',
  licence: 'CC-BY-SA-3.0',
}
const MINETEST: Shelf = {
  package: 'minetest-data',
  folder: 'usr/share/games/minetest/games/minetest_game/mods/',
  set: 'short',
  licence: 'CC-BY-SA-3.0',
}
const SPHINX: Shelf = {
  package: 'pocketsphinx-testdata',
  folder: 'usr/share/pocketsphinx/test/data/',
  set: 'short',
  licence: 'BSD-2-Clause',
}
const SONIC_PI: Shelf = {
  package: 'sonic-pi-samples',
  folder: 'usr/share/sonic-pi/samples/',
  set: 'short',
  licence: 'CC0',
}
const BUCKLE: Shelf = {
  package: 'bucklespring-data',
  folder: 'usr/share/buckle/wav/',
  set: 'short',
  licence: 'GPL-2+',
}
const LINCITY: Shelf = {
  package: 'lincity-ng-data',
  folder: 'usr/share/games/lincity-ng/sounds/',
  set: 'long',
  licence: 'GPL-2+ or CC-BY-SA-2.0',
}
const CODEC2: Shelf = { package: 'codec2-examples', folder: 'usr/share/codec2/wav/', set: 'long', licence: 'LGPL-2.1' }
const CLONK: Shelf = {
  package: 'openclonk-data',
  folder: 'usr/share/games/openclonk/Sound.ocg!',
  set: 'long',
  licence: 'CC-BY-3.0',
}

type Extra = Partial<Pick<CatalogueSound, 'licence' | 'strokeEveryS' | 'set'>>

function sound(
  shelf: Shelf,
  kind: SoundKind,
  part: 'tune' | 'held',
  named: string,
  paths: readonly string[],
  extra: Extra = {},
): CatalogueSound {
  return {
    name: named,
    kind,
    part,
    package: shelf.package,
    paths: paths.map((path) => shelf.folder + path),
    set: extra.set ?? shelf.set,
    licence: extra.licence ?? shelf.licence,
    strokeEveryS: extra.strokeEveryS ?? null,
  }
}

/** `a{1-4}.ogg` → a1.ogg … a4.ogg. */
function numbered(pattern: string): string[] {
  const [, head, from, to, tail] = /^(.*)\{(\d+)-(\d+)\}(.*)$/.exec(pattern)!
  return Array.from({ length: Number(to) - Number(from) + 1 }, (_, i) => `${head}${Number(from) + i}${tail}`)
}

/** One sound a file, named by `prefix` and the number. */
function each(
  shelf: Shelf,
  kind: SoundKind,
  part: 'tune' | 'held',
  prefix: string,
  pattern: string,
  extra: Extra = {},
): CatalogueSound[] {
  return numbered(pattern).map((path, i) => sound(shelf, kind, part, `${prefix}${i + 1}`, [path], extra))
}

const ufoai = (kind: SoundKind, part: 'tune' | 'held', name: string, extra: Extra = {}) =>
  sound(UFOAI, kind, part, name, [`ambience/${name}.ogg`], extra)
const steps = (part: 'tune' | 'held', ground: string, pattern: string) =>
  sound(UFOAI, 'footstep', part, `footsteps-${ground}`, numbered(`footsteps/${pattern}.ogg`), { strokeEveryS: 0.55 })
const minetestSteps = (part: 'tune' | 'held', ground: string, pattern: string) =>
  sound(MINETEST, 'footstep', part, `walk-${ground}`, numbered(`default/sounds/default_${pattern}.ogg`), {
    strokeEveryS: 0.5,
  })
const typing = (part: 'tune' | 'held', name: string, keys: readonly string[], strokeEveryS: number) =>
  sound(
    BUCKLE,
    'click',
    part,
    name,
    keys.flatMap((key) => [`${key}-1.wav`, `${key}-0.wav`]),
    { strokeEveryS },
  )
const lincity = (kind: SoundKind, part: 'tune' | 'held', name: string) =>
  sound(LINCITY, kind, part, name, [`${name}.wav`])
const voice = (part: 'tune' | 'held', name: string) => sound(CODEC2, 'speech', part, `codec2-${name}`, [`${name}.wav`])
const clonk = (kind: SoundKind, part: 'tune' | 'held', name: string, path: string, extra: Extra = {}) =>
  sound(CLONK, kind, part, name, [path], extra)
const clonkStrokes = (kind: SoundKind, part: 'tune' | 'held', name: string, pattern: string, strokeEveryS: number) =>
  sound(CLONK, kind, part, name, numbered(pattern), { strokeEveryS })

export const CATALOGUE: readonly CatalogueSound[] = [
  // Bubbly water. water01 is the densest; the brook and the water steps carry single bubble chirps.
  ufoai('bubbling', 'tune', 'water01'),
  ufoai('bubbling', 'tune', 'water02'),
  ufoai('bubbling', 'tune', 'water03'),
  ufoai('bubbling', 'held', 'water', { licence: 'GPL-2' }),
  ufoai('bubbling', 'held', 'alienbase-bubbles'),
  ...each(MINETEST, 'bubbling', 'tune', 'brook', 'env_sounds/sounds/env_sounds_water.{1-2}.ogg', { licence: 'CC0' }),
  sound(MINETEST, 'bubbling', 'held', 'brook3', ['env_sounds/sounds/env_sounds_water.3.ogg'], { licence: 'CC0' }),
  sound(MINETEST, 'bubbling', 'held', 'brook4', ['env_sounds/sounds/env_sounds_water.4.ogg'], { licence: 'CC0' }),
  ...each(MINETEST, 'bubbling', 'held', 'wading', 'default/sounds/default_water_footstep.{1-3}.ogg', {
    licence: 'CC-BY-3.0',
  }),
  clonk('bubbling', 'held', 'boiling', 'Liquids.ocg/Boiling.ogg', { licence: 'CC0' }),
  ...each(CLONK, 'bubbling', 'held', 'diving', 'Clonk.ocg/Movement.ocg/DivingLoop{1-3}.ogg'),

  // Hiss without a gurgle.
  sound(SONIC_PI, 'hiss', 'tune', 'sauna', ['ambi_sauna.flac']),
  ufoai('hiss', 'held', 'steam', { licence: 'GPL-2+' }),
  ufoai('hiss', 'tune', 'tv_static'),
  clonk('hiss', 'held', 'sizzle', 'Liquids.ocg/SmokeSizzle.ogg'),
  // Counted with neither: it hisses, and falling water is full of bubbles.
  clonk('falling-water', 'held', 'waterfall', 'Environment.ocg/Waterfall.ogg'),

  // Machines that beat.
  ufoai('pump', 'tune', 'minepump03', { licence: 'CC-BY-3.0' }),
  clonk('pump', 'held', 'pumpjack', 'Structures.ocg/Pumpjack.ogg', { licence: 'CC0' }),
  clonk('engine', 'held', 'steam-engine', 'Structures.ocg/SteamEngine.ogg', { licence: 'CC0' }),
  ufoai('engine', 'tune', 'hum', { licence: 'GPL-2+' }),
  ufoai('engine', 'held', 'hum2', { licence: 'GPL-2+' }),
  ufoai('engine', 'tune', 'machine1', { licence: 'GPL-2+' }),
  sound(SONIC_PI, 'engine', 'tune', '3d-printer', ['loop_3d_printer.flac']),
  clonk('engine', 'held', 'fan', 'Structures.ocg/FanLoop.ogg'),
  clonk('engine', 'held', 'propeller', 'Objects.ocg/Plane.ocg/PropellerLoop.ogg'),
  clonk('engine', 'held', 'furnace', 'Structures.ocg/Furnace.ocg/Loop.ogg'),
  ...[1, 2, 3].map((n) => lincity('engine', n === 2 ? 'held' : 'tune', `IndustryLight${n}`)),
  ...[1, 2, 3].map((n) => lincity('engine', n === 2 ? 'tune' : 'held', `IndustryHigh${n}`)),
  ...[1, 2, 3].map((n) => lincity('engine', n === 2 ? 'held' : 'tune', `CoalMine${n}`)),
  ...[1, 2, 3].map((n) => lincity('engine', n === 2 ? 'tune' : 'held', `OreMine${n}`)),
  ...[1, 2, 3].map((n) => lincity('engine', n === 2 ? 'held' : 'tune', `Mill${n}`)),
  ...[1, 2, 3].map((n) => lincity('engine', n === 2 ? 'tune' : 'held', `Recycle${n}`)),
  lincity('knock', 'tune', 'Blacksmith1'),
  lincity('knock', 'held', 'Blacksmith2'),
  lincity('knock', 'tune', 'Build1'),
  lincity('knock', 'held', 'Build2'),

  // Steps and knocks.
  steps('tune', 'grass', 'grass{1-4}'),
  steps('held', 'dirt', 'dirt{1-4}'),
  steps('tune', 'gravel', 'gravel{1-4}'),
  steps('held', 'sand', 'sand{1-2}'),
  steps('tune', 'stone', 'stone{1-4}'),
  steps('held', 'tile', 'tile{1-4}'),
  steps('tune', 'wood', 'wood{1-4}'),
  steps('held', 'snow', 'snow{1-4}'),
  steps('held', 'carpet', 'carpet{1-4}'),
  minetestSteps('tune', 'dirt', 'dirt_footstep.{1-2}'),
  minetestSteps('held', 'grass', 'grass_footstep.{1-3}'),
  minetestSteps('tune', 'gravel', 'gravel_footstep.{1-4}'),
  minetestSteps('held', 'hard', 'hard_footstep.{1-3}'),
  minetestSteps('tune', 'metal', 'metal_footstep.{1-3}'),
  minetestSteps('held', 'wood', 'wood_footstep.{1-2}'),
  minetestSteps('held', 'ice', 'ice_footstep.{1-3}'),
  sound(MINETEST, 'digging', 'tune', 'dig-gravel', numbered('default/sounds/default_gravel_dig.{1-2}.ogg'), {
    strokeEveryS: 0.5,
  }),
  sound(MINETEST, 'digging', 'held', 'dig-choppy', numbered('default/sounds/default_dig_choppy.{1-3}.ogg'), {
    strokeEveryS: 0.6,
  }),
  sound(MINETEST, 'digging', 'tune', 'dig-cracky', numbered('default/sounds/default_dig_cracky.{1-3}.ogg'), {
    strokeEveryS: 0.6,
  }),
  clonkStrokes('footstep', 'held', 'steps-hard', 'Clonk.ocg/Movement.ocg/StepHard{1-5}.ogg', 0.5),
  clonkStrokes('footstep', 'held', 'steps-soft', 'Clonk.ocg/Movement.ocg/StepSoft{1-6}.ogg', 0.5),
  clonkStrokes('digging', 'held', 'shovel', 'Clonk.ocg/Action.ocg/Dig.ocg/Dig{1-5}.wav', 0.7),
  clonkStrokes('knock', 'held', 'rustle', 'Clonk.ocg/Movement.ocg/Rustle{1-4}.ogg', 0.6),
  clonkStrokes('knock', 'held', 'wood-hits', 'Hits.ocg/Materials.ocg/Wood.ocg/WoodHit{1-3}.ogg', 0.7),
  clonkStrokes('knock', 'held', 'metal-hits', 'Hits.ocg/Materials.ocg/Metal.ocg/DullMetalHit{1-3}.ogg', 0.7),
  clonkStrokes('knock', 'held', 'rock-hits', 'Hits.ocg/Materials.ocg/Rock.ocg/RockHit{1-3}.ogg', 0.6),

  // Crackle and clicks.
  ufoai('crackle', 'tune', 'fire'),
  ufoai('crackle', 'held', 'fire1'),
  ufoai('crackle', 'tune', 'fire2'),
  ufoai('crackle', 'held', 'firesoft'),
  ufoai('crackle', 'tune', 'smallfire'),
  ufoai('crackle', 'held', 'fire03'),
  sound(MINETEST, 'crackle', 'held', 'campfire', ['fire/sounds/fire_small.ogg']),
  sound(MINETEST, 'crackle', 'tune', 'bonfire', ['fire/sounds/fire_large.ogg']),
  sound(SONIC_PI, 'crackle', 'tune', 'vinyl', ['vinyl_hiss.flac']),
  clonk('crackle', 'held', 'log-fire', 'Fire.ocg/Fire.ogg'),
  lincity('crackle', 'held', 'Fire1'),
  lincity('crackle', 'tune', 'Fire2'),
  typing('tune', 'typing-quick', ['1e', '1f', '20', '21', '22', '23'], 0.17),
  typing('held', 'typing-slow', ['10', '11', '12', '13', '39', '1c'], 0.4),

  // Voices.
  sound(SPHINX, 'speech', 'tune', 'librivox-870', ['librivox/sense_and_sensibility_01_austen_64kb-0870.wav']),
  sound(SPHINX, 'speech', 'tune', 'librivox-880', ['librivox/sense_and_sensibility_01_austen_64kb-0880.wav']),
  sound(SPHINX, 'speech', 'tune', 'librivox-930', ['librivox/sense_and_sensibility_01_austen_64kb-0930.wav']),
  ...each(SPHINX, 'speech', 'held', 'cards', 'cards/00{1-5}.wav'),
  ufoai('speech', 'held', 'radiomessage'),
  ufoai('speech', 'tune', 'tv_newswav'),
  voice('tune', 'all'),
  voice('held', 'big_dog'),
  voice('tune', 'cross'),
  voice('held', 'david4'),
  voice('tune', 'f2400'),
  voice('held', 'hts1a'),
  voice('tune', 'hts2a'),
  voice('held', 'm2400'),
  voice('tune', 'mmt1'),
  voice('held', 've9qrp'),
  voice('tune', 'vk2tpm_004'),
  voice('held', 'vk5qi'),
  voice('held', 'wia_16kHz'),
  lincity('crowd', 'tune', 'School1'),
  lincity('crowd', 'held', 'School2'),
  lincity('crowd', 'tune', 'SportsCroud1'),
  lincity('crowd', 'held', 'SportsCroud2'),
  lincity('crowd', 'held', 'MarketFull1'),

  // Weather, roads, animals.
  ufoai('wind', 'tune', 'arcticwind'),
  ufoai('wind', 'held', 'wind_turbine'),
  clonk('wind', 'held', 'wind-loop', 'Environment.ocg/WindLoop.ogg'),
  lincity('wind', 'tune', 'WindMill1'),
  lincity('wind', 'held', 'WindMill2'),
  ufoai('thunder', 'tune', 'thunder1'),
  ufoai('thunder', 'held', 'thunder2'),
  ufoai('thunder', 'held', 'thunder3'),
  clonk('rain', 'held', 'rain', 'Liquids.ocg/StereoRain.ogg'),
  ufoai('insect', 'tune', 'cricket_loop', { licence: 'GPL-2+' }),
  ufoai('insect', 'held', 'ufo_night_atm'),
  clonk('insect', 'held', 'birds', 'Environment.ocg/BirdsLoop.ogg'),
  ...[1, 2, 3].map((n) => lincity('insect', n === 2 ? 'held' : 'tune', `Farm${n}`)),
  ufoai('traffic', 'held', 'city_abnd_ufoai_atm'),
  ...[1, 2, 3].map((n) => lincity('traffic', n === 2 ? 'held' : 'tune', `TraficLow${n}`)),
  ...[1, 2, 3].map((n) => lincity('traffic', n === 2 ? 'tune' : 'held', `TraficHigh${n}`)),
  ...[1, 2, 3].map((n) => lincity('traffic', n === 2 ? 'held' : 'tune', `RailTrain${n}`)),
]
