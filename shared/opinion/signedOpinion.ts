import { utf8Bytes } from '../base/utf8Bytes'
import { opinionText } from '../job/opinionJson'
import type { Opinion } from '../job/opinions'
import { base64url, fromBase64url } from './base64url'

/** A key that was made on the device and never leaves it. */
export interface DeviceKey {
  /** Its public half, 65 bytes: an uncompressed point of P-256. */
  readonly publicKey: Uint8Array
  /** ECDSA over P-256 with SHA-256; 64 bytes, r and s. */
  readonly sign: (message: Uint8Array) => Promise<Uint8Array>
}

/** Checks an ECDSA signature over P-256 with SHA-256; the shells bring the platform's own. */
export type VerifySignature = (publicKey: Uint8Array, message: Uint8Array, signature: Uint8Array) => Promise<boolean>

/** `unsigned`: its device had no key; `changed`: it is not what its device signed. */
export type Signed = 'unchanged' | 'changed' | 'unsigned'

/**
 * The opinion with the device's signature.
 *
 * @param key `null`: as it is, unsigned. Pages that were not opened securely get no keys from the browser.
 * @see NIST FIPS 186-5, ECDSA with P-256 and SHA-256. [FIPS186]
 */
export async function signedOpinion(opinion: Opinion, key: DeviceKey | null): Promise<Opinion> {
  if (key === null) return { ...opinion, deviceKey: null, signature: null }
  const named: Opinion = { ...opinion, deviceKey: base64url(key.publicKey), signature: null }
  return { ...named, signature: base64url(await key.sign(utf8Bytes(opinionText(named)))) }
}

/** Whether an opinion is what its device signed. Says nothing of whose device it is. */
export async function signatureOf(opinion: Opinion, verify: VerifySignature): Promise<Signed> {
  if (opinion.deviceKey === null && opinion.signature === null) return 'unsigned'
  const key = fromBase64url(opinion.deviceKey ?? '')
  const signature = fromBase64url(opinion.signature ?? '')
  if (key?.length !== 65 || signature?.length !== 64) return 'changed'
  return (await verify(key, utf8Bytes(opinionText(opinion)), signature)) ? 'unchanged' : 'changed'
}

/** A device as people tell it from another: the last eight letters of its key. */
export function deviceName(deviceKey: string): string {
  return deviceKey.slice(-8)
}
