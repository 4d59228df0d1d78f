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
