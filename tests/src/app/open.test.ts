import { describe, expect, it } from 'vitest'
import type { Source } from '../../../src/app/open/source'
import { sweepRoot } from '../../../src/app/open/sweepRoot'
import { readRoute, routeHash } from '../../../src/app/route'

const source = (...paths: string[]): Source => ({
  name: 'walk',
  files: paths.map((path) => ({ path, bytes: new Blob([path]) })),
})
const pathsIn = (files: ReadonlyMap<string, Blob>) => [...files.keys()]

describe('the sweep folder in what was opened', () => {
  it('is where the sheet lies that is nearest to the top', () => {
    const root = sweepRoot(
      source('readme.txt', 'day/Sweep.CSV', 'day/line.json', 'day/clips/1.wav', 'day/old/sweep.csv'),
    )
    expect(pathsIn(root.files)).toEqual(['Sweep.CSV', 'line.json', 'clips/1.wav', 'old/sweep.csv'])
    expect(root.sheet).not.toBeNull()
    expect(root.line).not.toBeNull()
  })

  it('is where the sound is when there is no sheet', () => {
    const root = sweepRoot(source('notes.txt', 'day/1.wav', 'day/2.wav', 'day/more/3.wav'))
    expect(pathsIn(root.files)).toEqual(['1.wav', '2.wav', 'more/3.wav'])
    expect(root.sheet).toBeNull()
  })

  it('is asked for when two could be meant, or none is there', () => {
    expect(() => sweepRoot(source('a/sweep.csv', 'b/sweep.csv'))).toThrow(
      'walk: holds several sweep folders, a/ and b/; open one at a time',
    )
    expect(() => sweepRoot(source())).toThrow('walk: holds no file')
  })
})

describe('an address', () => {
  it('leads to the screen that it was made of', () => {
    for (const route of [
      { screen: 'jobs', jobId: null, lineId: null },
      { screen: 'help', jobId: null, lineId: null },
      { screen: 'line', jobId: 'a1', lineId: 'b2' },
    ] as const) {
      expect(readRoute(routeHash(route))).toEqual(route)
    }
  })

  it('that is none of the page leads to the jobs', () => {
    for (const hash of ['', '#', '#/', '#/nowhere', '#/job/a1', '#content']) {
      expect(readRoute(hash)).toEqual({ screen: 'jobs', jobId: null, lineId: null })
    }
    expect(readRoute('#/job/a1/b2/nowhere').screen).toBe('place')
  })
})
