import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readWav } from '../../shared/audio/readWav'
import { close } from '../support/close'
import { compareWithFile, goToListen, microphoneArgs, noiseWav, recordedClips } from './recording'
import { openDemo, openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

const LATE = { timeout: PATIENT_MS }

describe('recording on a phone whose microphone is a file at 44.1 kHz', () => {
  let folder: string
  let file: Float32Array
  let yard: Yard
  let opened: YardPage
  let page: Page
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'yardhark-record-'))
    const wav = noiseWav(44_100, 7, 11)
    writeFileSync(join(folder, 'mic.wav'), wav)
    file = readWav(wav, 'mic.wav').channels[0]!
    yard = await openYard(microphoneArgs(join(folder, 'mic.wav')))
    opened = await yard.open('phone')
    page = opened.page
    page.setDefaultTimeout(PATIENT_MS)
    await openDemo(page)
    await goToListen(page, 2)
  })
  afterAll(async () => {
    await opened.close()
    await yard.close()
    rmSync(folder, { recursive: true })
  })

  it('keeps a clip whose samples are those of the file', async () => {
    await page.getByRole('button', { name: 'Record point 1, air on' }).click()
    await page.getByRole('button', { name: 'Record point 1, air off' }).waitFor()
    const [kept] = await recordedClips(page)
    expect(kept!.row).toMatchObject({ point: 1, air: 'on', take: 1 })
    const { channels, sampleRateHz, encoding } = kept!.clip
    expect({ channels: channels.length, sampleRateHz, encoding }).toEqual({
      channels: 1,
      sampleRateHz: 44_100,
      encoding: { kind: 'pcm', bits: 16 },
    })
    expect(channels[0]!.length).toBe(88_200)
    const compared = compareWithFile(channels[0]!, file)
    console.log('compared', compared, kept!.recording)
    close(compared!.largest, 0, { abs: 1 / 32_768, because: 'one step of 16 bits' })
  })
})
void LATE
