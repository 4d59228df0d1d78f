import { execFileSync } from 'node:child_process'
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { CallError } from '../../../src/cli/callError'
import { openClip, openFile, prepareFolder, writeFile } from '../../../src/cli/files'
import { folderWith } from '../../support/runCli'

const opened = (folder: string, file: string) => {
  const result = openClip(folder, file)
  return 'problem' in result ? [result.problem.key, result.problem.values] : Buffer.from(result.bytes).toString()
}

describe('a clip of a folder', () => {
  it('is opened when it is a plain file, in a folder below or by a link that stays inside too', () => {
    const folder = folderWith({ 'clips/1.wav': 'one' })
    symlinkSync('clips/1.wav', join(folder, 'link.wav'))
    expect([opened(folder, 'clips/1.wav'), opened(folder, 'link.wav')]).toEqual(['one', 'one'])
    expect(opened(`${folder}/`, 'clips/1.wav')).toBe('one')
  })

  it('is opened when the folder itself is a link', () => {
    const folder = folderWith({ '1.wav': 'one' })
    const link = join(folderWith({}), 'link')
    symlinkSync(folder, link)
    expect(opened(link, '1.wav')).toBe('one')
  })

  it('is not opened when it is a link to somewhere else', () => {
    const outside = folderWith({ 'secret.wav': 'secret' })
    const folder = folderWith({})
    symlinkSync(join(outside, 'secret.wav'), join(folder, 'file.wav'))
    symlinkSync(outside, join(folder, 'below'))
    expect(opened(folder, 'file.wav')).toEqual(['file_outside', {}])
    expect(opened(folder, 'below/secret.wav')).toEqual(['file_outside', {}])
  })

  it('is not mistaken for inside when the other folder only begins with the same name', () => {
    const parent = folderWith({ 'a/1.wav': 'one', 'ab/2.wav': 'two' })
    symlinkSync(join(parent, 'ab/2.wav'), join(parent, 'a/2.wav'))
    expect(opened(join(parent, 'a'), '2.wav')).toEqual(['file_outside', {}])
  })

  it('is not waited for when it is a pipe, and not read when it is a folder, a device, or too large', () => {
    const folder = folderWith({ 'huge.wav': '' })
    execFileSync('mkfifo', [join(folder, 'pipe.wav')])
    mkdirSync(join(folder, 'folder.wav'))
    truncateSync(join(folder, 'huge.wav'), 700e6)
    expect(opened(folder, 'pipe.wav')).toEqual(['file_not_regular', {}])
    expect(opened(folder, 'folder.wav')).toEqual(['file_not_regular', {}])
    expect(openFile('/dev/zero')).toMatchObject({ problem: { key: 'file_not_regular' } })
    expect(opened(folder, 'huge.wav')).toEqual(['file_too_large', { size_mb: 700, most_mb: 600 }])
  })

  it('is missed with a guess at its name when only case or ending differ', () => {
    const folder = folderWith({ '06-ON.WAV': '', '06-off.wav': '', '7.flac': '' })
    expect(opened(folder, '06-on.wav')).toEqual(['missing_file_like', { near: '06-ON.WAV' }])
    expect(opened(folder, '7.wav')).toEqual(['missing_file_like', { near: '7.flac' }])
    expect(opened(folder, '08-on.wav')).toEqual(['missing_file', {}])
    expect(opened(folder, 'no/such/8.wav')).toEqual(['missing_file', {}])
  })
})

describe('a folder to be written into', () => {
  it('is made when it is not there, and filled', () => {
    const folder = join(folderWith({}), 'new/deep')
    prepareFolder(folder, false)
    writeFile(folder, 'below/1.wav', Buffer.from('one'))
    expect(opened(folder, 'below/1.wav')).toBe('one')
  })

  it('is refused when it holds something, unless forced', () => {
    const folder = folderWith({ 'mine.txt': 'mine' })
    expect(() => prepareFolder(folder, false)).toThrow(
      new CallError(`${folder}: is not empty; name another folder, or add --force to write into this one`),
    )
    prepareFolder(folder, true)
    expect(opened(folder, 'mine.txt')).toBe('mine')
  })

  it('is refused when a file stands in its way', () => {
    const file = join(folderWith({}), 'a.txt')
    writeFileSync(file, '')
    expect(() => prepareFolder(file, true)).toThrow('a file stands where a folder should be')
    expect(() => prepareFolder(join(file, 'below'), false)).toThrow('a file stands where a folder should be')
  })
})
