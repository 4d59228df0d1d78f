import type { Job, JobLine } from '../job/job'
import type { Opinion } from '../job/opinions'
import { cohensKappa } from './cohensKappa'
import { earKey } from './latestOpinions'
import { nearestPoint } from './nearestPoint'
import { type ReviewerRecord, reviewerRecord } from './reviewerRecord'

/** One who listened to lines of several jobs. */
export interface Reviewer {
  readonly key: string
  readonly name: string
  /** `null`: opinions that nobody signed. */
  readonly deviceKey: string | null
  /** Opinions given. */
  readonly opinions: number
  readonly record: ReviewerRecord
}

/** How far two agree beyond chance on which point is nearest. */
export interface EarPair {
  /** Keys of reviewers; `null` for the machine. */
  readonly first: string
  readonly second: string | null
  /** Lines on which both spoke. */
  readonly lines: number
  /** Cohen's kappa; `null` for fewer than two lines, or where chance alone would agree always. */
  readonly kappa: number | null
}

export interface Reviewers {
  readonly reviewers: readonly Reviewer[]
  readonly pairs: readonly EarPair[]
}

/**
 * Everybody who gave opinions on these jobs: each one's own record, and how far each two agree.
 *
 * Two agree on a line when the places they name have the same nearest point, or when both heard nothing. Of each the first
 * opinion of a line that was formed blind counts, or else the first. The machine's answer is the one that was kept when the
 * job was closed.
 */
export function reviewersOf(jobs: readonly Job[]): Reviewers {
  const given = jobs.flatMap(({ opinions = [] }) => opinions)
  const byKey = new Map<string, Opinion[]>()
  for (const opinion of given) byKey.set(earKey(opinion), [...(byKey.get(earKey(opinion)) ?? []), opinion])
  const reviewers = [...byKey].map(([key, own]) => ({
    key,
    name: own[0]!.reviewer.trim(),
    deviceKey: own[0]!.deviceKey,
    opinions: own.length,
    record: reviewerRecord(jobs, (opinion) => earKey(opinion) === key),
  }))
  const lines = jobs.flatMap((job) => job.lines.map((line) => ({ line, opinions: job.opinions ?? [] })))
  const said = new Map(reviewers.map(({ key }) => [key, lines.map((each) => saidOf(each, key))]))
  const machine = lines.map(({ line }) => machineSaid(line))
  const keys = reviewers.map(({ key }) => key)
  const pairs = keys.flatMap((first, i) =>
    [...keys.slice(i + 1), null].flatMap((second) => {
      const other = second === null ? machine : said.get(second)!
      const both = said.get(first)!.flatMap((own, line) => {
        const theirs = other[line] ?? null
        return own === null || theirs === null ? [] : [[own, theirs] as const]
      })
      return both.length === 0 ? [] : [{ first, second, lines: both.length, kappa: cohensKappa(both) }]
    }),
  )
  return { reviewers, pairs }
}

const NOTHING = 'nothing heard'

function saidOf({ line, opinions }: { line: JobLine; opinions: readonly Opinion[] }, key: string): string | null {
  const own = opinions
    .filter((opinion) => opinion.lineId === line.id && earKey(opinion) === key && opinion.says !== 'record again')
    .sort((a, b) => Number(a.seen.answer) - Number(b.seen.answer) || a.timeS - b.timeS)
  const [first] = own
  if (first === undefined) return null
  return first.alongM === null ? NOTHING : pointName(first.alongM, line)
}

function machineSaid(line: JobLine): string | null {
  const answer = line.keptAnswer?.answer
  if (answer === undefined) return null
  const [best] = answer.sources
  return best === undefined ? NOTHING : pointName(best.alongM, line)
}

function pointName(alongM: number, line: JobLine): string | null {
  const points = line.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row))
  const point = nearestPoint(alongM, points)
  return point === null ? null : String(point)
}
