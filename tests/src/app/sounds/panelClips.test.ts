import { describe, expect, it } from 'vitest'
import type { HeardClip } from '../../../../shared/evidence/heardClip'
import type { JobClip, JobLine } from '../../../../shared/job/job'
import { panelClips } from '../../../../src/app/sounds/panelClips'

const clip = (
  point: number,
  air: 'on' | 'off',
  more: { take?: number; sound?: boolean; alongM?: number } = {},
): JobClip => ({
  row: {
    point,
    alongM: more.alongM ?? point,
    file: `${point}-${air}-${more.take ?? 1}.wav`,
    air,
    take: more.take ?? 1,
    sharedTake: true,
    sweep: '1',
    offsetM: 0,
    timeS: null,
    contact: null,
    airKpa: null,
    note: '',
    unknown: {},
  },
  sound: more.sound === false ? null : { sha256: `${point}${air}${more.take ?? 1}`, bytes: 1 },
  problems: [],
})

const lineOf = (clips: readonly JobClip[]) =>
  ({ sweeps: [{ id: 's', name: '1', clips, problems: [] }] }) as unknown as JobLine

const heardAs = (clips: readonly JobClip[], spoilt: readonly string[] = []) =>
  Object.fromEntries(
    clips.map(({ row, sound }) => {
      const severity = spoilt.includes(row.file) ? 'spoilt' : 'note'
      const evidence = { bands: [], problems: [{ key: 'silent', severity, values: {} }] } as unknown
      return [sound?.sha256 ?? '', { evidence, problems: [] } as HeardClip]
    }),
  )

describe('clips of a point', () => {
  const clips = [clip(3, 'on'), clip(5, 'off'), clip(5, 'on', { take: 2 }), clip(5, 'on'), clip(4, 'on'), clip(9, 'on')]

  it('are its own, the air on first', () => {
    const { own } = panelClips(lineOf(clips), heardAs(clips), 5)
    expect(own.map(({ file }) => file)).toEqual(['5-on-1.wav', '5-on-2.wav', '5-off-1.wav'])
  })

  it('put what can be used before what was set aside', () => {
    const { own } = panelClips(lineOf(clips), heardAs(clips, ['5-on-1.wav']), 5)
    expect(own.map(({ file, usable }) => [file, usable])).toEqual([
      ['5-on-2.wav', true],
      ['5-on-1.wav', false],
      ['5-off-1.wav', true],
    ])
  })

  it('come with the nearest on either side, by the place and not by the number', () => {
    const odd = [...clips, clip(20, 'on', { alongM: 4.5 })]
    const { before, after } = panelClips(lineOf(odd), heardAs(odd), 5)
    expect([before?.point, after?.point]).toEqual([20, 9])
  })

  it('have no neighbour past an end of the line', () => {
    expect(panelClips(lineOf(clips), heardAs(clips), 9).after).toBeNull()
    expect(panelClips(lineOf(clips), heardAs(clips), 3).before).toBeNull()
  })

  it('are shown before they were listened to, and without a sound', () => {
    const lost = [clip(1, 'on', { sound: false })]
    const { own, allOn } = panelClips(lineOf(lost), {}, 1)
    expect(own[0]).toMatchObject({ sha256: null, evidence: null, usable: false })
    expect(allOn).toEqual([])
  })

  it('are none for a point that is not there', () => {
    expect(panelClips(lineOf(clips), {}, 77).own).toEqual([])
  })
})
