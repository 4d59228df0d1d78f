import { webcrypto } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import type { Opinion } from '../../../shared/job/opinions'
import { readJob } from '../../../shared/job/readJob'
import { agreement } from '../../../shared/opinion/agreement'
import { base64url, fromBase64url } from '../../../shared/opinion/base64url'
import { blindPoints } from '../../../shared/opinion/blindPoints'
import { cohensKappa } from '../../../shared/opinion/cohensKappa'
import { nearestPoint } from '../../../shared/opinion/nearestPoint'
import { opinionFile, readOpinionFile } from '../../../shared/opinion/opinionFile'
import { opinionDensity, pooledDensity } from '../../../shared/opinion/pooledDensity'
import { brierScore, reviewerRecord } from '../../../shared/opinion/reviewerRecord'
import { signatureOf, signedOpinion } from '../../../shared/opinion/signedOpinion'
import { toRecordAgain } from '../../../shared/opinion/toRecordAgain'
import { withOpinions } from '../../../shared/opinion/withOpinions'
import { close } from '../../support/close'
import { BASE_JOB, opinionOf } from '../../support/editedJob'
import { clipOf } from '../../support/packedJob'

const CURVE = { name: 'ECDSA', namedCurve: 'P-256' }
const HASH = { name: 'ECDSA', hash: 'SHA-256' }

async function verify(publicKey: Uint8Array, message: Uint8Array, signature: Uint8Array): Promise<boolean> {
  const key = await webcrypto.subtle.importKey('raw', publicKey, CURVE, false, ['verify'])
  return webcrypto.subtle.verify(HASH, key, signature, message)
}

async function newKey() {
  const pair = await webcrypto.subtle.generateKey(CURVE, false, ['sign', 'verify'])
  const publicKey = new Uint8Array(await webcrypto.subtle.exportKey('raw', pair.publicKey))
  const sign = async (message: Uint8Array) =>
    new Uint8Array(await webcrypto.subtle.sign(HASH, pair.privateKey, message))
  return { publicKey, sign }
}

describe('an opinion', () => {
  const full = opinionOf('full', {
    again: [{ point: 3, note: 'a mower' }],
    comments: [{ clip: 'a'.repeat(64), atS: 1.25, text: '<b>gurgles</b>\u202e' }],
    seen: { answer: true, opinions: true, shuffled: false, heard: ['b'.repeat(64)] },
  })

  it('goes into a job and out of it as it is, and into a file of its own', () => {
    const job: Job = { ...BASE_JOB, opinions: [full, opinionOf('deaf', NOT_HEARD)] }
    expect(readJob(JSON.stringify(jobJson(job)), 'job.json').opinions).toEqual(job.opinions)
    expect(readOpinionFile(opinionFile(job, job.opinions!), 'o.json')).toEqual({
      jobId: job.id,
      opinions: job.opinions,
    })
  })

  it.each<[Partial<Opinion>, string]>([
    [{ alongM: null }, 'a place, a window and a confidence are expected with "here"'],
    [{ says: 'cannot hear it' }, 'none of them otherwise'],
    [{ windowM: [3, 2] }, 'the first is expected to be the smaller'],
    [{ confidence: 1.5 }, 'a number from 0 to 1 is expected'],
    [{ signature: 'abc' }, '86 letters and digits are expected'],
    [{ comments: [{ clip: '../x', atS: null, text: '' }] }, '64 hexadecimal digits are expected'],
  ])('that cannot be is refused: %j', (odd, why) => {
    const job: Job = { ...BASE_JOB, opinions: [opinionOf('odd', odd)] }
    expect(() => readJob(JSON.stringify(jobJson(job)), 'job.json')).toThrow(why)
  })

  it('of another job, or of a line that is not there, does not join', () => {
    expect(() => withOpinions(BASE_JOB, [opinionOf('o', { jobId: 'x' })], 'o.json')).toThrow('of another job')
    expect(() => withOpinions(BASE_JOB, [opinionOf('o', { lineId: 'x' })], 'o.json')).toThrow('of a line')
    expect(() => readOpinionFile('{"opinion_file_version": 9}', 'o.json')).toThrow('from a newer version')
    expect(() => readOpinionFile('{}', 'o.json')).toThrow('this is no file of opinions')
  })

  it('joins the job once, however often it comes, and changes neither its date nor anything else', () => {
    const once = withOpinions(BASE_JOB, [full], 'o.json')
    expect(once.newOpinions).toBe(1)
    expect(once.job).toEqual({ ...BASE_JOB, opinions: [full] })
    expect(withOpinions(once.job, [full], 'o.json').job).toBe(once.job)
  })
})

const NOT_HEARD = { says: 'cannot hear it', alongM: null, windowM: null, confidence: null } as const

describe('a signature', () => {
  it('holds while nothing of the opinion is changed, also after it went through its file', async () => {
    const signed = await signedOpinion(opinionOf('o'), await newKey())
    const { opinions } = readOpinionFile(opinionFile(BASE_JOB, [signed]), 'o.json')
    expect(await signatureOf(opinions[0]!, verify)).toBe('unchanged')
    expect(await signatureOf({ ...signed, alongM: 3.21 }, verify)).toBe('changed')
    expect(await signatureOf({ ...signed, reviewer: 'somebody else' }, verify)).toBe('changed')
    expect(await signatureOf({ ...signed, seen: { ...signed.seen, answer: true } }, verify)).toBe('changed')
    const other = await newKey()
    expect(await signatureOf({ ...signed, deviceKey: base64url(other.publicKey) }, verify)).toBe('changed')
    expect(await signatureOf({ ...signed, deviceKey: null }, verify)).toBe('changed')
  })

  it('is missing where the device has no key, and that is said', async () => {
    expect(await signatureOf(await signedOpinion(opinionOf('o'), null), verify)).toBe('unsigned')
  })

  it("is checked as RFC 6979's test vector for P-256 and SHA-256 says [RFC6979]", async () => {
    const hex = (text: string) => Uint8Array.from(Buffer.from(text, 'hex'))
    const key = hex(
      '04' +
        '60FED4BA255A9D31C961EB74C6356D68C049B8923B61FA6CE669622E60F29FB6' +
        '7903FE1008B8BC99A41AE9E95628BC64F2F1B20C2D7E9F5177A3C294D4462299',
    )
    const signature = hex(
      'EFD48B2AACB6A8FD1140DD9CD45E81D69D2C877B56AAF991C34D0EA84EAF3716' +
        'F7CB1C942D657C41D436C7A1B6E29F65F3E900DBB9AFF4064DC4AB2F843ACDA8',
    )
    expect(await verify(key, new TextEncoder().encode('sample'), signature)).toBe(true)
    expect(await verify(key, new TextEncoder().encode('Sample'), signature)).toBe(false)
  })

  it('is written in base64url as RFC 4648 has it [RFC4648]', () => {
    const pairs: readonly (readonly [string, string])[] = [
      ['', ''],
      ['f', 'Zg'],
      ['fo', 'Zm8'],
      ['foo', 'Zm9v'],
      ['foob', 'Zm9vYg'],
      ['fooba', 'Zm9vYmE'],
      ['foobar', 'Zm9vYmFy'],
    ]
    for (const [text, code] of pairs) expect(base64url(new TextEncoder().encode(text))).toBe(code)
    expect(base64url(Uint8Array.of(0x14, 0xfb, 0x9c, 0x03, 0xd9, 0x7e))).toBe('FPucA9l-')
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        expect(fromBase64url(base64url(bytes))).toEqual(bytes)
      }),
      { seed: 4648 },
    )
    expect(fromBase64url('a+b')).toBeNull()
  })
})

describe('several opinions', () => {
  const grid = Array.from({ length: 1001 }, (_, i) => i / 100)

  it('pool linearly: the mean of the densities, whose integral is 1 [Stone1961]', () => {
    const first = opinionDensity(opinionOf('a', { alongM: 2, windowM: [1.5, 2.5], confidence: 0.8 }), grid)!
    const second = opinionDensity(opinionOf('b', { alongM: 7, windowM: [6, 8], confidence: 0.5 }), grid)!
    const pooled = pooledDensity([first, second])!
    for (const i of [0, 200, 500, 700]) {
      const mean = (first.perM[i]! + second.perM[i]!) / 2
      close(pooled.perM[i]!, mean, { abs: 1e-12, because: 'rounding' })
    }
    const total = pooled.perM.reduce((sum, value) => sum + value, 0) / 100
    close(total, 1, { abs: 0.002, because: 'the ends count half by trapezoids' })
    // 0.8 over a metre and 0.5 spread over the 8 m outside the other's window of 2 m: (0.8 + 0.5/8)/2.
    close(pooled.perM[200]!, (0.8 + 0.5 / 8) / 2, { rel: 0.01, because: 'a grid of 1 cm blurs the ends of windows' })
    expect(opinionDensity(opinionOf('c', NOT_HEARD), grid)).toBeNull()
    expect(pooledDensity([])).toBeNull()
    expect(() => pooledDensity([first, { alongM: [0, 1], perM: [1, 1] }])).toThrow('different grids')
  })

  it.each([
    [20, 5, 10, 15, 0.4],
    [45, 15, 25, 15, 0.1304],
    [25, 35, 5, 35, 0.2593],
  ])("agree by Cohen's kappa as worked tables say: %i %i %i %i [Cohen1960]", (yesYes, yesNo, noYes, noNo, kappa) => {
    const times = (count: number, pair: readonly [string, string]) => Array.from({ length: count }, () => pair)
    const pairs = [
      ...times(yesYes, ['y', 'y']),
      ...times(yesNo, ['y', 'n']),
      ...times(noYes, ['n', 'y']),
      ...times(noNo, ['n', 'n']),
    ]
    close(cohensKappa(pairs)!, kappa, { abs: 5e-5, because: 'the table is printed with four places' })
  })

  it('have no kappa where it says nothing', () => {
    expect(cohensKappa([['1', '1']])).toBeNull()
    expect(
      cohensKappa([
        ['1', '1'],
        ['1', '1'],
      ]),
    ).toBeNull()
    expect(
      cohensKappa([
        ['1', '1'],
        ['2', '2'],
      ]),
    ).toBe(1)
  })

  it('agree on a place by spread, nearest point and shared window', () => {
    const points = [1, 2, 3].map((point) => ({ point, alongM: 2 * point }))
    expect(nearestPoint(3, points)).toBe(1)
    expect(nearestPoint(3.01, points)).toBe(2)
    expect(nearestPoint(3, [])).toBeNull()
    const places = [
      { alongM: 3.5, windowM: [3, 4] as const },
      { alongM: 4.5, windowM: [3.5, 5] as const },
      { alongM: 5.5, windowM: [3.75, 6] as const },
    ]
    expect(agreement(places, points)).toEqual({
      placed: 3,
      spreadM: 2,
      samePoint: 1,
      pairs: 3,
      sharedWindowM: [3.75, 4],
    })
    expect(agreement([], points)).toEqual({ placed: 0, spreadM: null, samePoint: 0, pairs: 0, sharedWindowM: null })
  })

  it('score by Brier as worked values say: 0.09 for 70 % when it came, 0.49 when it did not [Brier1950]', () => {
    close(brierScore([{ chance: 0.7, came: true }])!, 0.09, { abs: 1e-12, because: 'rounding' })
    close(brierScore([{ chance: 0.7, came: false }])!, 0.49, { abs: 1e-12, because: 'rounding' })
    expect(
      brierScore([
        { chance: 0.5, came: true },
        { chance: 0.5, came: false },
      ]),
    ).toBe(0.25)
    expect(brierScore([])).toBeNull()
  })

  it('make a record of their reviewer, over lines whose damage was found afterwards and that were judged blind', () => {
    const before = 1_790_002_000 // the damage lies at 3.1 m and was found at 1 790 003 000
    const opinions = [
      opinionOf('held', { timeS: before, alongM: 3.2, windowM: [2.8, 3.6], confidence: 0.8 }),
      opinionOf('missed', { timeS: before, alongM: 5, windowM: [4.5, 5.5], confidence: 0.6 }),
      opinionOf('deaf', { timeS: before, ...NOT_HEARD }),
      opinionOf('late', { timeS: before + 2000 }),
      opinionOf('told', { timeS: before, seen: { answer: true, opinions: false, shuffled: false, heard: [] } }),
      opinionOf('another', { timeS: before, reviewer: 'somebody else' }),
    ]
    const record = reviewerRecord([{ ...BASE_JOB, opinions }], ({ reviewer }) => reviewer === 'office')
    expect(record).toMatchObject({ placed: 2, held: 1, promised: 1.4, notHeard: 1 })
    close(record.medianErrorM!, 1, { abs: 1e-9, because: 'rounding: errors of 0.1 and 1.9 m' })
    close(record.brier!, (0.04 + 0.36) / 2, { abs: 1e-9, because: 'rounding' })
  })

  it('ask for a point to be recorded again, until it was', () => {
    const [line] = BASE_JOB.lines
    const asking = opinionOf('o', {
      ...NOT_HEARD,
      says: 'record again',
      again: [{ point: 2, note: 'a mower' }],
      timeS: 1_790_005_000,
    })
    expect(toRecordAgain(line!, [asking])).toEqual([{ point: 2, reviewer: 'office', note: 'a mower' }])
    const clip = clipOf(new Map(), 2, 'on', new Uint8Array(50))
    const again = { ...clip, row: { ...clip.row, timeS: 1_790_006_000 } }
    const done = { ...line!, sweeps: [{ ...line!.sweeps[0]!, clips: [again] }] }
    expect(toRecordAgain(done, [asking])).toEqual([])
  })

  it('are formed of points in an order of their own, the same for the same seed', () => {
    expect(blindPoints([3, 1, 2, 2], null)).toEqual([1, 2, 3].map((point) => ({ point, shown: point })))
    const many = Array.from({ length: 15 }, (_, i) => i + 1)
    const shuffled = blindPoints(many, 'a')
    expect(shuffled).toEqual(blindPoints(many, 'a'))
    expect(shuffled.map(({ shown }) => shown)).toEqual(many)
    expect(shuffled.map(({ point }) => point)).not.toEqual(many)
    expect(shuffled.map(({ point }) => point).sort((a, b) => a - b)).toEqual(many)
  })
})
