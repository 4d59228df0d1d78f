/** What each clip counts for, so that both classes and, within them, all jobs count alike; their mean is 1. */
export function classWeights(isLeak: readonly boolean[], jobs: readonly string[]): Float64Array {
  const key = (i: number) => `${isLeak[i]} ${jobs[i]}`
  const clips = new Map<string, number>()
  for (let i = 0; i < jobs.length; i++) clips.set(key(i), (clips.get(key(i)) ?? 0) + 1)
  const jobsWith = (leak: boolean) => [...clips.keys()].filter((each) => each.startsWith(`${leak} `)).length
  const count = { true: jobsWith(true), false: jobsWith(false) }
  const classes = (count.true > 0 ? 1 : 0) + (count.false > 0 ? 1 : 0)
  return Float64Array.from(jobs, (_, i) => jobs.length / (classes * count[`${isLeak[i]!}`] * clips.get(key(i))!))
}
