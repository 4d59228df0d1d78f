/** The units a person reads in. Files and the core keep to metres and kilopascals. */
export interface ShownUnits {
  readonly length: 'm' | 'ft'
  readonly pressure: 'kPa' | 'psi' | 'bar'
}

export const METRIC: ShownUnits = { length: 'm', pressure: 'kPa' }
