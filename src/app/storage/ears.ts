import { base64url } from '../../../shared/opinion/base64url'
import type { DeviceKey } from '../../../shared/opinion/signedOpinion'
import type { Database } from './database'

const CURVE = { name: 'ECDSA', namedCurve: 'P-256' }
const HASH = { name: 'ECDSA', hash: 'SHA-256' }

/** Devices whose opinions are known here: the name that somebody gave to each key. */
export type KnownDevices = Readonly<Record<string, string>>

/**
 * The key of this device, made the first time. Its private half cannot leave the browser.
 *
 * @returns `null` where the page was not opened securely, or the browser keeps no keys: what is said is not signed then.
 * @see NIST FIPS 186-5, ECDSA with P-256 and SHA-256. [FIPS186]
 */
export async function deviceKey(database: Database): Promise<DeviceKey | null> {
  if (!globalThis.crypto?.subtle) return null
  const pair = await keptPair(database).catch(() => null)
  if (pair === null) return null
  const publicKey = new Uint8Array(await crypto.subtle.exportKey('raw', pair.publicKey))
  return {
    publicKey,
    sign: async (message) =>
      new Uint8Array(await crypto.subtle.sign(HASH, pair.privateKey, message as Uint8Array<ArrayBuffer>)),
  }
}

async function keptPair(database: Database): Promise<CryptoKeyPair> {
  const kept = (await database.get('device', 'ears/key')) as CryptoKeyPair | undefined
  if (kept !== undefined) return kept
  const made = (await crypto.subtle.generateKey(CURVE, false, ['sign', 'verify'])) as CryptoKeyPair
  const write = database.transaction('device', 'readwrite')
  const other = (await write.store.get('ears/key')) as CryptoKeyPair | undefined // another tab was quicker
  if (other === undefined) await write.store.put(made, 'ears/key')
  await write.done
  return other ?? made
}

/** The public key of this device as opinions carry it; `null` as long as none was made. */
export async function ownDeviceKey(database: Database): Promise<string | null> {
  const kept = (await database.get('device', 'ears/key')) as CryptoKeyPair | undefined
  if (kept === undefined || !globalThis.crypto?.subtle) return null
  return base64url(new Uint8Array(await crypto.subtle.exportKey('raw', kept.publicKey)))
}

/** Checks what another device signed; false also for a key that is none. */
export async function verifySignature(
  publicKey: Uint8Array,
  message: Uint8Array,
  signature: Uint8Array,
): Promise<boolean> {
  try {
    const key = await crypto.subtle.importKey('raw', publicKey as Uint8Array<ArrayBuffer>, CURVE, false, ['verify'])
    return await crypto.subtle.verify(
      HASH,
      key,
      signature as Uint8Array<ArrayBuffer>,
      message as Uint8Array<ArrayBuffer>,
    )
  } catch {
    return false
  }
}

/** What whoever listens on this device is called in opinions; empty at first. */
export async function loadReviewer(database: Database): Promise<string> {
  const kept = await database.get('device', 'ears/name')
  return typeof kept === 'string' ? kept : ''
}

export async function keepReviewer(database: Database, name: string): Promise<void> {
  await database.put('device', name, 'ears/name')
}

export async function loadKnownDevices(database: Database): Promise<KnownDevices> {
  const kept = await database.get('device', 'ears/known')
  if (typeof kept !== 'object' || kept === null) return {}
  return Object.fromEntries(Object.entries(kept).filter(([, name]) => typeof name === 'string'))
}

export async function keepKnownDevices(database: Database, known: KnownDevices): Promise<void> {
  await database.put('device', known, 'ears/known')
}
