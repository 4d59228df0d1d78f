import { useEffect, useMemo, useRef, useState } from 'react'
import { bandsOverFloor } from '../../../../shared/evidence/bandsOverFloor'
import { useAppState } from '../../frame/useApp'
import { useLater } from '../../frame/useLater'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { Panel } from '../../look/widgets/Panel'
import { SelectField } from '../../look/widgets/SelectField'
import { PointSounds } from '../../sounds/PointSounds'
import { type PanelClip, panelClips, type ShownClips } from '../../sounds/panelClips'
import { PointSaid } from './PointSaid'
import { POINT_HEADING, showPointPanel } from './showPointPanel'
import type { PointPanelProps } from './slots'

/** Spectrum, spectrogram and sound of one point. */
export function PointPanel({ line, point, onClose, onSpectrumSeen, onPlayed }: PointPanelProps) {
  const { say } = useSay()
  const heard = useAppState((state) => state.session.heard)
  const clips = useMemo(() => panelClips(line, heard, point.point), [line, heard, point.point])
  const settings = useMemo(() => settingsOf(clips.own), [clips])
  const [chosenSetting, chooseSetting] = useState<string | null>(null)
  const setting = settings.find(({ value }) => value === chosenSetting) ?? settings[0]
  const shown = useMemo(() => shownClips(setting?.clips ?? [], clips), [setting, clips])
  const telling = useMemo(() => tellingBands(clips), [clips])
  const isOpen = useLater() // the tap answers first, the pictures follow
  const heading = useRef<HTMLSpanElement>(null)
  const latestClose = useRef(onClose)
  latestClose.current = onClose
  useEffect(() => {
    // Whoever chose it, by finger or by keyboard, may have done so a screen away.
    const from = document.activeElement
    showPointPanel()
    const panel = heading.current?.closest('section')
    const onKey = ({ key }: KeyboardEvent) => key === 'Escape' && latestClose.current()
    panel?.addEventListener('keydown', onKey)
    return () => {
      if (document.activeElement === document.body && from instanceof Element)
        (from as HTMLElement | SVGElement).focus()
    }
  }, [])
  return (
    <Panel
      heading={
        <span ref={heading} id={POINT_HEADING} tabIndex={-1}>
          {say('label_point', { point: point.point })}
        </span>
      }
      aside={
        <Button kind="bare" iconOnly icon={<Icon name="close" />} onClick={onClose}>
          {say('do_close_point', { point: point.point })}
        </Button>
      }
    >
      <p>
        <PointSaid point={point} />
      </p>
      {settings.length > 1 && (
        <SelectField
          label={say('label_take')}
          value={setting!.value}
          options={settings.map(({ value, sweep, take }) => ({ value, words: say('label_take_of', { sweep, take }) }))}
          onChange={chooseSetting}
        />
      )}
      {setting === undefined && <p>{say('listen_silent')}</p>}
      {setting !== undefined && isOpen && (
        <PointSounds
          point={point.point}
          clips={shown}
          telling={telling}
          onSpectrumSeen={onSpectrumSeen}
          onPlayed={onPlayed}
        />
      )}
    </Panel>
  )
}

interface Setting {
  readonly value: string
  readonly sweep: string
  readonly take: number
  readonly clips: readonly PanelClip[]
}

/** Clips of one sweep and take are looked at together. */
function settingsOf(own: readonly PanelClip[]): Setting[] {
  const found = new Map<string, Setting>()
  for (const clip of own) {
    if (clip.sha256 === null) continue
    const { sweep, take } = clip
    const value = JSON.stringify([sweep, take])
    found.set(value, { value, sweep, take, clips: [...(found.get(value)?.clips ?? []), clip] })
  }
  return [...found.values()]
}

function shownClips(own: readonly PanelClip[], { before, after }: ReturnType<typeof panelClips>): ShownClips {
  const withSound = (clip: PanelClip | null) => (clip?.sha256 == null ? null : clip)
  return {
    on: own.find(({ air }) => air === 'on') ?? null,
    off: own.find(({ air }) => air === 'off') ?? null,
    before: withSound(before),
    after: withSound(after),
  }
}

function tellingBands({ own, allOn }: ReturnType<typeof panelClips>) {
  const evidenceOf = (air: 'on' | 'off') =>
    own.flatMap((clip) => (clip.air === air && clip.usable && clip.evidence !== null ? [clip.evidence] : []))
  return bandsOverFloor(evidenceOf('on'), evidenceOf('off'), allOn)
}
