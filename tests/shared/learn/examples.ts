import { Random } from '../../../shared/base/random'
import { DETECTOR_FEATURES } from '../../../shared/learn/detectorFeatures'
import type { Example } from '../../../shared/learn/example'

/** Clips as invented: leaks differ by one standard deviation in six features, each job has an offset of its own. */
export function inventedExamples(jobs: number, clipsAJob: number, seed = 'examples'): Example[] {
  const random = new Random(seed)
  return Array.from({ length: jobs }, (_, j) => {
    const offset = DETECTOR_FEATURES.map(() => random.normal(0, 0.7))
    return Array.from({ length: clipsAJob }, (_, c): Example => {
      const isLeak = c % 2 === 0
      return {
        name: `job ${j}/clip ${c}.wav`,
        sha256: `${j}`.padStart(32, '0') + `${c}`.padStart(32, '0'),
        job: `job ${j}`,
        device: j % 3 === 0 ? 'spike and phone' : 'plate and phone',
        cover: j % 2 === 0 ? 'grass' : 'pavers',
        isLeak,
        values: DETECTOR_FEATURES.map((_, i) =>
          i === 20 && c % 5 === 0 ? null : offset[i]! + random.normal(isLeak && i < 6 ? 1 : 0, 1),
        ),
      }
    })
  }).flat()
}

export const ORDER = {
  name: 'invented',
  data: 'Numbers drawn at random; no sound was behind them.',
  trainedAt: '2026-01-05T10:00:00Z',
  programVersion: '0.1.0',
  missShare: 0.05,
  limits: ['It never heard anything.'],
}
