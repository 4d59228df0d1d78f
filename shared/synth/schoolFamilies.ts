import { FAMILIES, type Family } from './families'

const PLAIN = FAMILIES[0]!

/**
 * Yards that a detector learns in: none of them is a family that judges places. Wider than those in level, with more that
 * disturbs, and a third of them without a leak. Invented, as all of the yard is.
 */
export const SCHOOL_FAMILIES: readonly Family[] = [
  {
    ...PLAIN,
    name: 'school garden',
    overFloorDb: [0, 30],
    bends: [0, 2],
    nuisances: ['footsteps', 'knocks', 'gusts', 'voices', 'birds', 'traffic', 'rain', 'strokes'],
    nuisanceShare: 0.3,
  },
  {
    ...PLAIN,
    name: 'school street',
    overFloorDb: [3, 25],
    nuisances: ['footsteps', 'knocks', 'gusts', 'voices', 'traffic', 'rain', 'strokes'],
    nuisanceShare: 0.7,
    toldPumpShare: 0.6,
    coupledSdDb: [2, 4],
  },
  {
    ...PLAIN,
    name: 'school terrace',
    slabShare: 0.8,
    pipeDb: [-24, -3],
    toldDepth: [0.8, 1, 1.2],
    ridingShare: 0.3,
  },
  {
    ...PLAIN,
    name: 'school basin',
    inletShare: 1,
    inletOverLeakDb: [-9, 9],
    movingShare: 0.4,
    slugShare: 0.5,
    mixedRates: true,
    nuisanceShare: 0.2,
  },
  {
    ...PLAIN,
    name: 'school dry',
    leaks: 0,
    inletShare: 0.6,
    untoldNoiseShare: 0.7,
    toldPumpShare: 0.4,
    nuisances: ['footsteps', 'knocks', 'gusts', 'voices', 'birds', 'traffic', 'rain', 'strokes'],
    nuisanceShare: 0.8,
  },
  {
    ...PLAIN,
    name: 'school night',
    leaks: 0,
    inletShare: 0.3,
    mixedRates: true,
    ridingShare: 0.3,
    nuisances: ['footsteps', 'gusts', 'traffic', 'rain'],
    nuisanceShare: 0.4,
  },
]
