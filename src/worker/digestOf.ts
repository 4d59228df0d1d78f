import { sha256 } from '../../shared/base/sha256'

/** SHA-256, hexadecimal; by the browser where the page was opened securely, else by ours, which takes longer. */
export async function digestOf(bytes: Uint8Array): Promise<string> {
  if (!globalThis.crypto?.subtle) return sha256(bytes)
  const digest = await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>)
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
