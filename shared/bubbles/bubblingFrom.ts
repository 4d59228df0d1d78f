import type { RingSummary } from './ring'

/** Rings times share a second that noise, voices and steps reach by chance. */
const CHANCE = 0.5

/** Beyond chance, this many more a second make it three chances in five. */
const SCALE = 1.5

/**
 * How surely something bubbles here.
 *
 * Counts the rings, weighs them by the share of bursts that ring (speech and steps have many bursts and few rings),
 * and takes off what chance gives.
 *
 * @param summary Only `ratePerS` and `ringShare` are used.
 * @returns 0 (no more rings than chance gives) to 1; never falls as the ring rate rises at the same share.
 */
export function bubblingFrom(summary: Pick<RingSummary, 'ratePerS' | 'ringShare'>): number {
  const heard = summary.ratePerS * (summary.ringShare ?? 0)
  return 1 - Math.exp(-Math.max(0, heard - CHANCE) / SCALE)
}
