import { readdirSync, readFileSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { demoFiles } from '../../../shared/synth/demoFiles'
import { demoYard } from '../../../shared/synth/demoJob'

const folder = resolve(import.meta.dirname, '../../../demo-audio')

describe('demo-audio', () => {
  it('is what the yard makes from its seed, byte for byte, and nothing else', () => {
    const names: string[] = []
    for (const { path, bytes } of demoFiles()) {
      names.push(path)
      expect(Buffer.compare(readFileSync(resolve(folder, path)), bytes), `${path}; run npm run demo-audio`).toBe(0)
    }
    expect(readdirSync(folder).sort()).toEqual(names.sort())
  })

  it('is at most 6 MB', () => {
    const bytes = readdirSync(folder).reduce((sum, name) => sum + statSync(resolve(folder, name)).size, 0)
    expect(bytes).toBeLessThanOrEqual(6e6)
  })

  it('says that it is invented', () => {
    expect(readFileSync(resolve(folder, 'README.md'), 'utf8')).toContain('Nobody recorded any of this')
  })

  it('has the leak at an elbow under the pavers, not at a point', () => {
    const { told, truth, clips } = demoYard()
    const at = truth.leakAlongM[0]!
    expect(told.fittings.find((fitting) => fitting.atM === at)?.kind).toBe('elbow')
    expect(told.stretches.find((stretch) => at > stretch.fromM && at < stretch.toM)?.cover).toBe('pavers')
    expect(clips.some((clip) => clip.row.alongM === at)).toBe(false)
  })

  it('has two clips at other rates and depths and one spoilt', () => {
    const { clips } = demoYard()
    const others = clips.filter((clip) => clip.recorder.sampleRateHz !== 16_000)
    expect(others.map((clip) => clip.recorder.encoding.bits)).toEqual([24, 32])
    expect(clips.filter((clip) => clip.spoil !== null).length).toBe(1)
  })
})
