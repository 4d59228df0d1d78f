import { fileURLToPath } from 'node:url'
import { inProcesses } from '../inProcesses'
import type { Judged, SweepOrder } from './judgeSweep'

const WORKER = fileURLToPath(new URL('./sweepWorker.ts', import.meta.url))

/**
 * Judges sweeps on several cores.
 *
 * @param tell Called after each sweep with how many are done.
 * @returns In the order of the sweeps.
 */
export function runSweeps(
  orders: readonly SweepOrder[],
  cores: number,
  tell: (done: number) => void,
): Promise<Judged[]> {
  return inProcesses(WORKER, orders, cores, tell)
}
