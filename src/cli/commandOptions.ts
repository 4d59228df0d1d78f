import type { OptionTable } from './args'

/** Options of `yardhark locate`; its help names each. */
export const LOCATE_OPTIONS: OptionTable = {
  json: 'flag',
  spacing: 'value',
  'spacing-ft': 'value',
  start: 'value',
  'start-ft': 'value',
  depth: 'value',
  'depth-ft': 'value',
  feet: 'flag',
  detector: 'value',
  device: 'value',
  cache: 'value',
}

/** Options of `yardhark inspect`; its help names each. */
export const INSPECT_OPTIONS: OptionTable = { csv: 'flag', json: 'flag' }

/** Options of `yardhark synth`; its help names each. */
export const SYNTH_OPTIONS: OptionTable = {
  out: 'value',
  family: 'value',
  seed: 'value',
  list: 'flag',
  force: 'flag',
}

/** Options of `yardhark pack`; its help names each. */
export const PACK_OPTIONS: OptionTable = {
  out: 'value',
  points: 'value',
  'without-customer': 'flag',
  flac: 'flag',
  name: 'value',
  spacing: 'value',
  'spacing-ft': 'value',
  start: 'value',
  'start-ft': 'value',
  force: 'flag',
}

/** Options of `yardhark open`; its help names each. */
export const OPEN_OPTIONS: OptionTable = { out: 'value', force: 'flag' }

/** `yardhark verify` has no options but --help. */
export const VERIFY_OPTIONS: OptionTable = {}

/** Options of `yardhark merge`; its help names each. */
export const MERGE_OPTIONS: OptionTable = { out: 'value', force: 'flag' }

/** Options of `yardhark train`; its help names each. */
export const TRAIN_OPTIONS: OptionTable = {
  out: 'value',
  name: 'value',
  about: 'value',
  miss: 'value',
  cache: 'value',
  force: 'flag',
}

/** Options of `yardhark score`; its help names each. */
export const SCORE_OPTIONS: OptionTable = { device: 'value', cover: 'value', json: 'flag', cache: 'value' }

/** Options of `yardhark evaluate`; its help names each. */
export const EVALUATE_OPTIONS: OptionTable = { json: 'flag', cache: 'value' }
/** Options of `yardhark report`; its help names each. */
export const REPORT_OPTIONS: OptionTable = { html: 'value', office: 'flag', feet: 'flag', force: 'flag' }
