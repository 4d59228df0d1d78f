import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readWav } from '../../../shared/audio/readWav'
import { spectrogram } from '../../../shared/spectrum/spectrogram'
import { welch } from '../../../shared/spectrum/welch'
import { close } from '../../support/close'
import { readDemoSpectrumReference, sameDensity, sameSpectrogram } from './signals'

describe('a clip of demo-audio, read and analysed here and by SciPy', () => {
  const reference = readDemoSpectrumReference()
  const bytes = readFileSync(resolve(import.meta.dirname, '../../..', reference.clip.file))
  const clip = readWav(bytes, reference.clip.file)
  const samples = Float64Array.from(clip.channels[0]!)

  it('is the clip the reference was made of', () => {
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    expect(sha256, `the clip was made anew; run: ${reference.command}`).toBe(reference.clip.sha256)
  })

  it('has the same rate, length and mean square', () => {
    expect(clip.channels.length).toBe(1)
    expect(clip.sampleRateHz).toBe(reference.clip.sample_rate_hz)
    expect(samples.length).toBe(reference.clip.sample_count)
    const meanSquare = samples.reduce((sum, v) => sum + v * v, 0) / samples.length
    close(meanSquare, reference.clip.mean_square, { rel: 1e-10, because: '16-bit counts over 32768 are exact' })
  })

  it('has the same density', () => {
    sameDensity(welch(samples, clip.sampleRateHz, { segmentLength: 1024 })!, reference.welch[0]!)
  })

  it('has the same spectrogram on the same axes', () => {
    const options = { segmentLength: 512, overlap: 0.75 }
    sameSpectrogram(spectrogram(samples, clip.sampleRateHz, options), reference.spectrogram)
  })
})
