import { unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import { freshPressureTest } from '../../../shared/job/pressureTests'
import { openJobFile } from '../../../shared/jobfile/openJobFile'
import { type Beside, digest, packed, partsFor, smallJob, sourceOf } from '../../support/packedJob'

async function opened(bytes: Uint8Array) {
  const kept: Beside = new Map()
  const file = await openJobFile(sourceOf(bytes), 'job.zip', {
    digest,
    keep: async ({ sha256, bytes: each }) => void kept.set(sha256, each),
    onDone: () => undefined,
  })
  return { ...file, kept }
}

describe('a job file', () => {
  it('gives back the same job, and every sound and photo byte for byte', async () => {
    const { job, beside } = smallJob()
    const again = await opened(await packed(job, beside))
    expect(again.problems).toEqual([])
    expect(jobJson(again.job)).toEqual(jobJson(job))
    expect([...again.kept.keys()].sort()).toEqual([...beside.keys()].sort())
    for (const [sha256, bytes] of beside) expect(Buffer.compare(again.kept.get(sha256)!, bytes)).toBe(0)
    expect(again.points).toBeNull()
    expect(again.withoutCustomer).toBe(false)
  })

  it('is the same byte for byte from the same job, also after it went through a job file', async () => {
    const { job, beside } = smallJob()
    const first = await packed(job, beside)
    const again = await opened(first)
    expect(await digest(await packed(again.job, again.kept))).toBe(await digest(first))
  })

  it('may hold its clips as FLAC: smaller, and the same sounds byte for byte when it is opened', async () => {
    const { job, beside } = smallJob()
    const choice = { points: null, withoutCustomer: false, asFlac: true }
    const bytes = await packed(job, beside, choice)
    expect(bytes.length).toBeLessThan(0.97 * (await packed(job, beside)).length) // of noise; a quiet clip halves
    const names = Object.keys(unzipSync(bytes)).filter((name) => name.includes('/clips/'))
    expect(names.filter((name) => name.endsWith('.flac')).length).toBeGreaterThan(4)
    expect(Buffer.from(unzipSync(bytes)[`${names[0]!.split('/')[0]}/bag-info.txt`]!).toString()).toContain(
      'Job-File: 2',
    )
    const again = await opened(bytes)
    expect(again.problems).toEqual([])
    expect(jobJson(again.job)).toEqual(jobJson(job))
    for (const [sha256, each] of beside) expect(Buffer.compare(again.kept.get(sha256)!, each)).toBe(0)
    expect(await digest(await packed(again.job, again.kept, choice))).toBe(await digest(bytes))
  })

  it('holds one folder, texts first, then the job, then clips and photos by name', async () => {
    const { job, beside } = smallJob()
    const names = Object.keys(unzipSync(await packed(job, beside)))
    expect(names.map((name) => name.replace(/-[0-9a-f]{16}(?=\.)|[0-9a-f]{16}/, '-#'))).toEqual(
      [
        'bagit.txt',
        'bag-info.txt',
        'manifest-sha256.txt',
        'tagmanifest-sha256.txt',
        'data/job.json',
        ...['01-off', '01-on', '02-off', '02-on', '03-off', '03-on'].map((name) => `data/clips/${name}-#.wav`),
        'data/clips/04-on-#.ogg',
        'data/photos/-#.png',
      ].map((path) => `Alder-Square-fountain/${path}`),
    )
  })

  it('says which points it holds when only some were shared, and leaves the others out', async () => {
    const { job, beside } = smallJob()
    const again = await opened(await packed(job, beside, { points: new Set([3, 1]), withoutCustomer: false }))
    expect(again.points).toEqual([1, 3])
    expect(again.problems).toEqual([])
    const clips = again.job.lines[0]!.sweeps[0]!.clips
    expect(clips.map(({ row }) => `${row.point} ${row.air}`)).toEqual(['1 on', '1 off', '3 on', '3 off'])
    expect(again.kept.size).toBe(5)
  })

  it('without the customer holds none of the texts that somebody typed, and no photo', async () => {
    const { job, beside } = smallJob()
    const told = JSON.parse(JSON.stringify(job).replace('under the hedge', 'SECRET').replace('Alder Square', 'SECRET'))
    const line = told.lines[0]
    const secret: Job = {
      ...told,
      lines: [
        {
          ...line,
          name: 'SECRET',
          line: { ...line.line, unknown: { customer: 'SECRET' } },
          complaint: { said: 'SECRET', ruledOut: ['pump'], isolation: 'SECRET', waterPasses: null },
          site: { startName: 'SECRET', endName: 'SECRET', routeWay: null, startAt: null, snapDeg: null, photo: null },
          signs: [{ id: 's', kind: 'other', alongM: 1, offsetM: 0, note: 'SECRET' }],
          pressureTests: [
            freshPressureTest({
              id: 't',
              createdS: 1,
              unit: 'psi',
              name: 'SECRET',
              readings: [{ id: 'r', timeS: 0, value: 11, note: 'SECRET', leftOut: false }],
              fittings: [{ id: 'f', name: 'SECRET', state: 'weeping', by: null }],
              kept: {
                timeS: 2,
                verdict: 'drops',
                version: '0.1.0',
                judged: {
                  reasons: [{ key: 'hold_weeping', values: { fittings: 'plug, SECRET' } }],
                  dropOf: 'weeping fitting',
                  fallKpaPerMin: null,
                  band: [],
                },
              },
            }),
          ],
          confirmations: [
            { id: 'c', timeS: 1, says: 'yes', note: 'SECRET', verdict: 'located', alongM: 3, windowM: [2, 4] },
          ],
          sweeps: line.sweeps.map((sweep: Job['lines'][number]['sweeps'][number]) => ({
            ...sweep,
            clips: sweep.clips.map((clip) => ({
              ...clip,
              row: { ...clip.row, note: 'SECRET', unknown: { x: 'SECRET' } },
            })),
          })),
        },
      ],
    }
    const bytes = await packed(secret, beside, { points: null, withoutCustomer: true })
    const files = unzipSync(bytes)
    const texts = Object.entries(files).map(([name, each]) => name + Buffer.from(each).toString('latin1'))
    expect(texts.filter((text) => text.includes('SECRET'))).toEqual([])
    const again = await opened(bytes)
    expect(again.withoutCustomer).toBe(true)
    expect(again.kept.size).toBe(beside.size - 1)
    expect(again.job.lines[0]!.found![0]!.alongM).toBe(3.1)
  })

  it('names a clip whose sound is gone, and takes the rest along', async () => {
    const { job, beside } = smallJob()
    beside.delete(job.lines[0]!.sweeps[0]!.clips[2]!.sound!.sha256)
    const again = await opened(await packed(job, beside))
    expect(again.problems).toEqual([{ key: 'bag_clip_lost', severity: 'weak', values: { file: '02-on.wav' } }])
    expect(again.kept.size).toBe(beside.size)
  })

  it('holds one clip at a time while it is planned and written', async () => {
    const { job, beside } = smallJob()
    const parts = partsFor(beside)
    const asked: string[] = []
    const load = async (sha256: string) => {
      asked.push(sha256)
      return parts.load(sha256)
    }
    const { planJobFile } = await import('../../../shared/jobfile/planJobFile')
    const plan = await planJobFile(job, { points: null, withoutCustomer: false }, { ...parts, load })
    expect(asked.length).toBe(beside.size) // each once, and none is kept: writing asks again
    for (const { bytes } of plan.files) await bytes()
    expect(asked.length).toBe(2 * beside.size)
  })
})
