import { zipSync } from 'fflate'
import { expect, it } from 'vitest'
import { utf8Bytes } from '../../../shared/base/utf8Bytes'
import { holdsBag } from '../../../shared/jobfile/holdsBag'

const source = (bytes: Uint8Array) => ({
  size: bytes.length,
  read: async (from: number, to: number) => bytes.slice(from, to),
})
const bag = zipSync({ 'job/bagit.txt': utf8Bytes('BagIt-Version: 1.0\n'), 'job/data/job.json': utf8Bytes('{}') })
const folder = zipSync({ 'sweep.csv': utf8Bytes('point,file\n'), 'deep/in/bagit.txt': utf8Bytes('') })

it('tells a bag from a sweep folder in a zip', async () => {
  expect(await holdsBag(source(bag), 'a.zip')).toBe(true)
  expect(await holdsBag(source(folder), 'a.zip')).toBe(false)
})

it('leaves what is no zip to whoever opens folders, and says what is wrong with a bag that is damaged', async () => {
  expect(await holdsBag(source(utf8Bytes('hello')), 'a.zip')).toBe(false)
  expect(await holdsBag(source(new Uint8Array(0)), 'a.zip')).toBe(false)
  const broken = bag.slice()
  broken[broken.length - 6] = 0xff // where the list begins
  await expect(holdsBag(source(broken), 'a.zip')).rejects.toThrow('a.zip')
})
