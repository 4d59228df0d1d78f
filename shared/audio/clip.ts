import type { Problem } from '../base/problem'

/**
 * One recording as samples. Never changed after it was read: native rate, raw level, every channel.
 */
export interface Clip {
  /** One array a channel, all of one length; full scale is ±1 (float files may exceed it). */
  readonly channels: readonly Float32Array[]
  /** Sample rate in Hz, 8 000 to 192 000. */
  readonly sampleRateHz: number
  /** How the samples stood in the file. */
  readonly encoding: { readonly kind: 'pcm' | 'float' | 'decoded'; readonly bits: number }
  /** What the reader had to say: truncated, header never patched, header lies. */
  readonly problems: readonly Problem[]
}
