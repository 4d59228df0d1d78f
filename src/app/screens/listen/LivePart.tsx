import { type ReactNode, useEffect, useState } from 'react'
import { type LiveSpectrum, levelWord, liveSpectrum, SOUND_PARTS } from '../../../../shared/record/liveSound'
import type { HeardBlock } from '../../../../shared/record/settling'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { useRecorder, useRecorderState } from './useRecorder'

/** How loud it is and at what pitch, in words and lengths, and whether it has settled. */
export function LivePart({ children }: { readonly children?: ReactNode }) {
  const { say } = useSay()
  const recorder = useRecorder()
  const device = useRecorderState((state) => state.device)
  const phase = useRecorderState((state) => state.recording.phase)
  if (phase === 'closed' || phase === 'opening') {
    return (
      <Panel heading={say('heading_live')}>
        <p>{say(phase === 'closed' ? 'label_closed' : 'label_opening')}</p>
        <Button disabled={phase === 'opening'} onClick={() => void recorder.open()}>
          {say('do_open_microphone')}
        </Button>
      </Panel>
    )
  }
  return (
    <Panel heading={say('heading_live')} aside={<SettledNote />}>
      <LevelLength />
      <Ribbon />
      <div className="listen-device">
        <span className="soft">{device}</span>
        <Button kind="bare" disabled={phase !== 'open'} onClick={() => recorder.shut()}>
          {say('do_close_microphone')}
        </Button>
      </div>
      {children}
    </Panel>
  )
}

function SettledNote() {
  const { say } = useSay()
  const settled = useRecorderState((state) => state.recording.settled)
  return (
    <span className="listen-settled" data-settled={settled} role="status">
      {say(settled ? 'label_ready' : 'label_not_settled')}
    </span>
  )
}

/** The quietest and loudest that the length shows, dBFS. */
const LENGTH_DB = { low: -90, high: 0 } as const

const LEVEL_WORDS = {
  dead: 'label_level_dead',
  faint: 'label_level_faint',
  good: 'label_level_good',
  loud: 'label_level_loud',
  overloaded: 'label_level_overloaded',
} as const

function LevelLength() {
  const { say } = useSay()
  const blocks = useRecorderState((state) => state.recording.blocks)
  const { power, peak } = lastSecond(blocks)
  const db = power > 0 ? 10 * Math.log10(power) : null
  const share = db === null ? 0 : Math.min(1, Math.max(0, (db - LENGTH_DB.low) / (LENGTH_DB.high - LENGTH_DB.low)))
  const word = levelWord(power, peak)
  return (
    <div className="listen-level" data-word={word}>
      <p className="listen-level-words">
        <span>{`${say('label_level')}: ${say(LEVEL_WORDS[word])}`}</span>
        {db !== null && <span className="soft">{say('label_level_now', { level_dbfs: db })}</span>}
      </p>
      <svg className="listen-length" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
        <rect className="listen-length-all" width="100" height="4" rx="2" />
        <rect className="listen-length-now" width={Math.max(0.5, 100 * share)} height="4" rx="2" />
      </svg>
    </div>
  )
}

function lastSecond(blocks: readonly HeardBlock[]): { readonly power: number; readonly peak: number } {
  const endS = blocks.at(-1)?.atS ?? 0
  const last = blocks.filter(({ atS }) => atS > endS - 1)
  const durationS = last.reduce((sum, block) => sum + block.durationS, 0)
  const energy = last.reduce((sum, block) => sum + block.power * block.durationS, 0)
  return {
    power: durationS === 0 ? 0 : energy / durationS,
    peak: last.reduce((most, block) => Math.max(most, block.peak), 0),
  }
}

const STEPS = 48
const EVERY_MS = 120

const MOSTLY = {
  rumble: 'label_mostly_rumble',
  gurgle: 'label_mostly_gurgle',
  ring: 'label_mostly_ring',
  hiss: 'label_mostly_hiss',
} as const
const PARTS = { rumble: 'label_rumble', gurgle: 'label_gurgle', ring: 'label_ring', hiss: 'label_hiss' } as const

/** The live spectrum: a band along the pitches that swells where it is loud. */
function Ribbon() {
  const { say } = useSay()
  const spectrum = useLiveSpectrum()
  return (
    <figure className="listen-ribbon">
      <figcaption>{spectrum?.loudest ? say(MOSTLY[spectrum.loudest]) : say('label_level_dead')}</figcaption>
      <svg viewBox="0 0 480 72" preserveAspectRatio="none" role="img" aria-label={say('label_live_picture')}>
        <path d={ribbonPath(spectrum?.widths ?? [])} />
      </svg>
      <div className="listen-ribbon-words soft" aria-hidden="true">
        {SOUND_PARTS.map(({ name }) => (
          <span key={name}>{say(PARTS[name])}</span>
        ))}
      </div>
    </figure>
  )
}

function useLiveSpectrum(): LiveSpectrum | null {
  const recorder = useRecorder()
  const [spectrum, setSpectrum] = useState<LiveSpectrum | null>(null)
  useEffect(() => {
    let bins = new Float32Array(0)
    const timer = setInterval(() => {
      const analyser = recorder.analyser()
      if (analyser === null || document.visibilityState === 'hidden') return
      if (bins.length !== analyser.frequencyBinCount) bins = new Float32Array(analyser.frequencyBinCount)
      analyser.getFloatFrequencyData(bins)
      setSpectrum(liveSpectrum(bins, analyser.context.sampleRate, STEPS))
    }, EVERY_MS)
    return () => clearInterval(timer)
  }, [recorder])
  return spectrum
}

/** A closed band round the middle of the picture, as wide as the widths say. */
function ribbonPath(widths: readonly number[]): string {
  if (widths.length === 0) return 'M0 35.5H480V36.5H0Z'
  const x = (i: number) => ((i + 0.5) * 480) / widths.length
  const half = (width: number) => 0.5 + 35 * width
  const top = widths.map((width, i) => `${x(i).toFixed(1)} ${(36 - half(width)).toFixed(1)}`)
  const bottom = widths.map((width, i) => `${x(i).toFixed(1)} ${(36 + half(width)).toFixed(1)}`).reverse()
  return `M${[...top, ...bottom].join('L')}Z`
}
