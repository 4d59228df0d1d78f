import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assignByName, assignInOrder, byCount } from '../../../shared/sweep/assignClips'
import { countedBehind, doubledClips, joinedRows, movedClip } from '../../../shared/sweep/joinClips'

const told = (clips: ReturnType<typeof assignByName>) =>
  clips.map(({ name, point, air, take }) => `${name}: ${point} ${air} ${take}`)

describe('clips by the number in their names', () => {
  it('are those of the points that people name, with air and take', () => {
    expect(
      told(assignByName(['6-off.WAV', '06 on.wav', 'p7_on_take2.wav', '7.wav', 'Office 8.wav'], [6, 7, 8])),
    ).toEqual([
      '06 on.wav: 6 on 1',
      '6-off.WAV: 6 off 1',
      '7.wav: 7 on 1',
      'p7_on_take2.wav: 7 on 2',
      'Office 8.wav: 8 on 1',
    ])
  })

  it.each([
    ['a date before the number', ['20260504_0006.wav', '20260504_0007.wav'], [6, 7]],
    ['the number of the recorder before it, which is a point as well', ['R9_0006.wav', 'R9_0007.wav'], [6, 7]],
    ['a rate behind it', ['6 48000.wav', '7 48000.wav'], [6, 7]],
  ])('are found with %s', (_, names, points) => {
    expect(assignByName(names, [6, 7, 9]).map(({ point }) => point)).toEqual(points)
  })

  it('are of no point where the line has none of that number, and stand last', () => {
    expect(told(assignByName(['6.wav', '99.wav', 'wind.wav'], [5, 6]))).toEqual([
      '6.wav: 6 on 1',
      '99.wav: null on 1',
      'wind.wav: null on 1',
    ])
  })

  it('lose no file and give no two of them the same point, take and air (seed 2)', () => {
    const name = fc.stringMatching(/^[a-z0-9 _-]{0,12}(?:-on|-off)?\.wav$/)
    fc.assert(
      fc.property(fc.uniqueArray(name, { maxLength: 20 }), (names) => {
        const clips = assignByName(names, [1, 2, 3, 10])
        expect(clips.map((clip) => clip.name).sort()).toEqual([...names].sort())
        expect(
          doubledClips(
            clips.filter(({ name }) => !/take/.test(name)),
            [],
          ),
        ).toEqual([])
      }),
      { seed: 2, numRuns: 200 },
    )
  })
})

describe('clips in order', () => {
  const names = ['Z10.wav', 'Z9.wav', 'Z11.wav', 'Z12.wav', 'Z8.wav']

  it('go along the points as the recorder counts', () => {
    expect(told(assignInOrder(names, [3, 4, 5], 'off_on'))).toEqual([
      'Z8.wav: 3 off 1',
      'Z9.wav: 3 on 1',
      'Z10.wav: 4 off 1',
      'Z11.wav: 4 on 1',
      'Z12.wav: 5 off 1',
    ])
  })

  it('are of no point after the last one', () => {
    expect(assignInOrder(names, [3, 4], 'on').map(({ point }) => point)).toEqual([3, 4, null, null, null])
  })

  it('are ordered the same whatever order they come in', () => {
    expect([...names].reverse().sort(byCount)).toEqual([...names].sort(byCount))
    expect(['b2', 'B10', 'a', 'b02', ''].sort(byCount)).toEqual(['', 'a', 'b02', 'b2', 'B10'])
  })
})

describe('joining a sweep', () => {
  const points = [{ point: 6, alongM: 5.1, offsetM: 0.2 }]
  const clip = { name: '06.wav', point: 6, air: 'on', take: 1 } as const

  it('puts clips where their points lie, under names that are free', () => {
    const taken = new Set(['06.WAV', '06-2.wav'])
    const rows = joinedRows([clip, { ...clip, point: null }, { ...clip, point: 7 }, { ...clip, take: 2 }], points, {
      sweep: '2',
      taken,
    })
    expect(rows.map(({ row }) => [row.file, row.alongM, row.offsetM, row.take, row.sweep, row.sharedTake])).toEqual([
      ['06-3.wav', 5.1, 0.2, 1, '2', true],
      ['06-4.wav', 5.1, 0.2, 2, '2', true],
    ])
  })

  it('names the clips that say the same as others, here or there', () => {
    const rows = joinedRows([{ ...clip, air: 'off' }], points, { sweep: '1', taken: new Set() }).map(({ row }) => row)
    const clips = [
      clip,
      { ...clip, name: 'b.wav' },
      { ...clip, name: 'c.wav', air: 'off' },
      { ...clip, point: null },
    ] as const
    expect(doubledClips(clips, rows)).toEqual(['b.wav', 'c.wav'])
    expect(doubledClips(clips, [])).toEqual(['b.wav'])
  })

  it('counts takes behind those of the sweep, and back', () => {
    const rows = joinedRows([{ ...clip, take: 3 }], points, { sweep: '1', taken: new Set() }).map(({ row }) => row)
    const clips = [clip, { ...clip, name: 'b.wav', air: 'off' }, { ...clip, name: 'c.wav', point: null }] as const
    const behind = countedBehind(clips, [], rows)
    expect(behind.map(({ take }) => take)).toEqual([4, 4, 1])
    expect(doubledClips(behind, rows)).toEqual([])
    expect(countedBehind(behind, rows, [])).toEqual(clips)
  })

  it('gives a clip that is moved to a point the next take there', () => {
    const clips = [clip, { ...clip, name: 'b.wav', point: null }, { ...clip, name: 'c.wav', point: null }] as const
    const moved = movedClip(movedClip(clips, [], 'b.wav', { point: 6 }), [], 'c.wav', { point: 6, air: 'off' })
    expect(moved.map(({ point, air, take }) => `${point} ${air} ${take}`)).toEqual(['6 on 1', '6 on 2', '6 off 1'])
    expect(movedClip(moved, [], 'b.wav', { point: null })[1]).toMatchObject({ point: null })
  })
})
