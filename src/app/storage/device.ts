import { LISTEN_WAYS } from '../../../shared/record/slot'
import { CONTACTS } from '../../../shared/sweep/sweep'
import { CLIP_LENGTH_S, type Device, type ListenSettings } from '../store/state'
import type { Database } from './database'

/** Settings as they were left; what is missing or odd is as on the first day. */
export async function loadDevice(database: Database, first: Device): Promise<Device> {
  const kept = await database.get('device', 'settings')
  if (typeof kept !== 'object' || kept === null) return first
  const { units, look, listen } = kept as Partial<Record<string, unknown>>
  const { length, pressure } = (units ?? {}) as Partial<Record<string, unknown>>
  return {
    units: {
      length: oneOf(['m', 'ft'], length, first.units.length),
      pressure: oneOf(['kPa', 'psi', 'bar'], pressure, first.units.pressure),
    },
    look: oneOf(['auto', 'light', 'dark'], look, first.look),
    listen: listenOf(listen, first.listen),
  }
}

export async function saveDevice(database: Database, device: Device): Promise<void> {
  await database.put('device', device, 'settings')
}

function listenOf(kept: unknown, first: ListenSettings): ListenSettings {
  const { lengthS, way, contact, deviceId, speak, hookedUp } = (kept ?? {}) as Partial<Record<string, unknown>>
  const isLength = typeof lengthS === 'number' && lengthS >= CLIP_LENGTH_S.least && lengthS <= CLIP_LENGTH_S.most
  return {
    lengthS: isLength ? lengthS : first.lengthS,
    way: oneOf(LISTEN_WAYS, way, first.way),
    contact: oneOf([...CONTACTS, null], contact, first.contact),
    deviceId: typeof deviceId === 'string' ? deviceId : null,
    speak: speak === true,
    hookedUp: hookedUp === true,
  }
}

function oneOf<Word>(known: readonly Word[], value: unknown, otherwise: Word): Word {
  return known.find((word) => word === value) ?? otherwise
}
