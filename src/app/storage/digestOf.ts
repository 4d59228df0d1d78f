import { sha256 } from '../../../shared/base/sha256'

/** SHA-256, hexadecimal. Where the page was not opened securely the browser has none, and ours takes longer. */
export async function digestOf(bytes: ArrayBuffer): Promise<string> {
  if (!globalThis.crypto?.subtle) return sha256(new Uint8Array(bytes))
  const digest = await crypto.subtle.digest('SHA-256', bytes)
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
