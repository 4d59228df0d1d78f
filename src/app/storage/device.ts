import type { Device } from '../store/state'
import type { Database } from './database'

/** Settings as they were left; what is missing or odd is as on the first day. */
export async function loadDevice(database: Database, first: Device): Promise<Device> {
  const kept = await database.get('device', 'settings')
  if (typeof kept !== 'object' || kept === null) return first
  const { units, look } = kept as Partial<Record<string, unknown>>
  const { length, pressure } = (units ?? {}) as Partial<Record<string, unknown>>
  return {
    units: {
      length: oneOf(['m', 'ft'], length, first.units.length),
      pressure: oneOf(['kPa', 'psi', 'bar'], pressure, first.units.pressure),
    },
    look: oneOf(['auto', 'light', 'dark'], look, first.look),
  }
}

export async function saveDevice(database: Database, device: Device): Promise<void> {
  await database.put('device', device, 'settings')
}

function oneOf<Word>(known: readonly Word[], value: unknown, otherwise: Word): Word {
  return known.find((word) => word === value) ?? otherwise
}
