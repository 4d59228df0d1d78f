import type { Judged } from './judgeSweep'

/** A sweep judged as invented, for tests: found exactly, loudest one spacing off, with what is changed. */
export function judgedSweep(changes: Partial<Judged> = {}): Judged {
  return {
    family: 'plain',
    seed: 'invented',
    entry: 'drawn',
    leaks: 1,
    verdict: 'located',
    error: 0,
    exitError: 0,
    loudestError: 1,
    parabolaError: 1,
    overFloorError: 1,
    bound: null,
    window: { width: 0.4, holds: true, score: 0.4 },
    crps: 0.1,
    sources: 1,
    found: 1,
    overFloorDb: 12,
    isPlain: false,
    clips: { spoilt: 0, named: 0, wronglyAside: 0 },
    drawS: 0,
    locateS: 1,
    ...changes,
  }
}
