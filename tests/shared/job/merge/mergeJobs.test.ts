import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../../../shared/job/job'
import { jobJson } from '../../../../shared/job/jobJson'
import { jobState } from '../../../../shared/job/merge/jobState'
import { mergeJobs } from '../../../../shared/job/merge/mergeJobs'
import { letGoApart, takeApart } from '../../../../shared/job/merge/takeApart'
import { readJob } from '../../../../shared/job/readJob'
import { sharedJob } from '../../../../shared/jobfile/sharedJob'
import { anEditedJob, BASE_JOB, opinionOf } from '../../../support/editedJob'

const merge = (own: Job, other: Job) => mergeJobs(own, other, 'other.zip').job
const stateText = (job: Job) => JSON.stringify(jobState(job))
const RUNS = { seed: 20_260_921, numRuns: 60 }

/** Every value and text in a job with its key, to see that none is lost. */
function everything(value: unknown, into = new Set<string>(), key = ''): Set<string> {
  if (Array.isArray(value)) for (const part of value) everything(part, into, key)
  else if (typeof value === 'object' && value !== null) {
    for (const [name, part] of Object.entries(value)) everything(part, into, name)
  } else if (value !== null && value !== '' && key !== 'changed_s') into.add(`${key} ${String(value)}`)
  return into
}

/** What is kept apart stands under `value`; here under its own key again. */
function everythingIn(job: Job): Set<string> {
  const all = everything(jobJson(job))
  for (const { place, value } of job.keptApart ?? []) everything({ [place.split('/').at(-1)!]: value }, all)
  return all
}

describe('merging copies of a job, random edits of seed 20260921', () => {
  it('is commutative: both ways hold the same', () => {
    fc.assert(
      fc.property(anEditedJob, anEditedJob, (a, b) => {
        expect(stateText(merge(a, b))).toBe(stateText(merge(b, a)))
      }),
      RUNS,
    )
  })

  it('is associative: in any order three copies give the same', () => {
    fc.assert(
      fc.property(anEditedJob, anEditedJob, anEditedJob, (a, b, c) => {
        expect(stateText(merge(merge(a, b), c))).toBe(stateText(merge(a, merge(b, c))))
        expect(stateText(merge(merge(a, c), b))).toBe(stateText(merge(merge(a, b), c)))
      }),
      RUNS,
    )
  })

  it('is idempotent: with itself, and again, it is the very same job', () => {
    fc.assert(
      fc.property(anEditedJob, anEditedJob, (a, b) => {
        expect(merge(a, a)).toBe(a)
        const once = merge(a, b)
        expect(merge(once, b)).toBe(once)
        expect(merge(once, a)).toBe(once)
      }),
      RUNS,
    )
  })

  it('loses nothing of either, and can be kept', () => {
    fc.assert(
      fc.property(anEditedJob, anEditedJob, (a, b) => {
        const both = merge(a, b)
        const held = everythingIn(both)
        for (const copy of [a, b]) expect([...everythingIn(copy)].filter((each) => !held.has(each))).toEqual([])
        expect(jobJson(readJob(JSON.stringify(jobJson(both)), 'job.json'))).toEqual(jobJson(both))
      }),
      RUNS,
    )
  })

  it('never shows another value than the own one where both tell something', () => {
    fc.assert(
      fc.property(anEditedJob, anEditedJob, (a, b) => {
        const both = merge(a, b)
        if (a.name !== '') expect(both.name).toBe(a.name)
        for (const sign of a.lines[0]!.signs!) {
          if (sign.note !== '') expect(both.lines[0]!.signs!.find(({ id }) => id === sign.id)!.note).toBe(sign.note)
        }
      }),
      RUNS,
    )
  })

  it('brings a copy that was shared without customer, or with some points, back without a trace', () => {
    fc.assert(
      fc.property(anEditedJob, (job) => {
        expect(merge(job, sharedJob(job, { points: null, withoutCustomer: true }))).toBe(job)
        expect(merge(job, sharedJob(job, { points: new Set([2]), withoutCustomer: true }))).toBe(job)
      }),
      RUNS,
    )
  })
})

describe('merging', () => {
  const withName = (name: string): Job => ({ ...BASE_JOB, name })

  it('keeps what two copies tell differently side by side, and lists it with its place', () => {
    const both = mergeJobs(withName('North yard'), withName('South yard'), 'other.zip')
    expect(both.job.name).toBe('North yard')
    expect(both.job.keptApart).toEqual([{ place: 'name', value: 'South yard' }])
    expect(both.newApart).toBe(1)
  })

  it('brings an opinion in, in order of time, and counts it', () => {
    const early = opinionOf('early', { timeS: 1 })
    const own = { ...BASE_JOB, opinions: [opinionOf('late', { timeS: 9 })] }
    const both = mergeJobs(own, { ...BASE_JOB, opinions: [early] }, 'other.zip')
    expect(both.job.opinions!.map(({ id }) => id)).toEqual(['early', 'late'])
    expect(both).toMatchObject({ newOpinions: 1, newClips: 0, newApart: 0 })
  })

  it('keeps an opinion that was changed under its id beside the one it was', () => {
    const first = { ...BASE_JOB, opinions: [opinionOf('o')] }
    const forged = { ...BASE_JOB, opinions: [opinionOf('o', { alongM: 3.3 })] }
    expect(merge(first, forged).opinions).toHaveLength(2)
  })

  it('leaves a clip out that the other copy still has and this one took out', () => {
    const [line] = BASE_JOB.lines
    const [clip, ...left] = line!.sweeps[0]!.clips
    const own: Job = {
      ...BASE_JOB,
      lines: [{ ...line!, sweeps: [{ ...line!.sweeps[0]!, clips: left }], removedClips: [clip!] }],
    }
    expect(merge(own, BASE_JOB)).toBe(own)
    expect(merge(BASE_JOB, own).lines[0]!.sweeps[0]!.clips).toHaveLength(left.length)
  })

  it('takes a log that goes on where the own one ends, without a word', () => {
    const withReadings = (values: readonly number[]): Job => ({
      ...BASE_JOB,
      lines: BASE_JOB.lines.map((line) => ({
        ...line,
        pressureTests: line.pressureTests!.map((test) => ({
          ...test,
          readings: values.map((value, i) => ({ id: `r-${i}`, timeS: 60 * i, value, note: '', leftOut: false })),
        })),
      })),
    })
    const both = merge(withReadings([200, 199]), withReadings([200, 199, 198]))
    expect(both.lines[0]!.pressureTests![0]!.readings).toHaveLength(3)
    expect(both.keptApart).toBeUndefined()
    expect(merge(withReadings([200, 199]), withReadings([201, 199])).keptApart).toHaveLength(1)
  })

  it('refuses another job', () => {
    expect(() => mergeJobs(BASE_JOB, { ...BASE_JOB, id: 'another' }, 'other.zip')).toThrow(
      'other.zip: belongs to another job; open it by itself',
    )
  })

  it('lets a person take what was kept apart, in any part of the job, and loses nothing by it', () => {
    const withNote = (note: string): Job => ({
      ...BASE_JOB,
      name: `Yard ${note}`,
      lines: BASE_JOB.lines.map((line) => ({
        ...line,
        sweeps: line.sweeps.map((sweep) => ({
          ...sweep,
          clips: sweep.clips.map((clip, i) => (i === 2 ? { ...clip, row: { ...clip.row, note } } : clip)),
        })),
      })),
    })
    const both = merge(withNote('one'), withNote('two'))
    expect(both.keptApart).toHaveLength(2)
    const taken = both.keptApart!.reduce(takeApart, both)
    expect(taken.name).toBe('Yard two')
    expect(taken.lines[0]!.sweeps[0]!.clips[2]!.row.note).toBe('two')
    expect(stateText(taken)).toBe(stateText(both))
    expect(taken.keptApart!.map(({ value }) => value)).toEqual(['Yard one', 'one'])
    expect(taken.keptApart!.reduce(letGoApart, taken).keptApart).toBeUndefined()
  })

  it('refuses a value that cannot stand where it is to be taken', () => {
    const odd: Job = { ...BASE_JOB, keptApart: [{ place: 'name', value: { no: 'name' } }] }
    expect(() => takeApart(odd, odd.keptApart![0]!)).toThrow('a text is expected')
  })
})
