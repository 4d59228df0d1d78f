import { useEffect, useRef, useState, useSyncExternalStore } from 'react'
import type { PowerDensity } from '../../../shared/spectrum/welch'
import type { PlainSamples } from '../../worker/protocol'
import type { ClipReading } from '../analysis/clipReader'
import { Listening, type ListeningState } from '../ears/listening'
import { Player } from '../ears/player'
import type { PanelClip } from './panelClips'

interface ListeningInput {
  readonly clips: readonly PanelClip[]
  readonly densities: ReadonlyMap<string, PowerDensity>
  readonly samplesOf: (clip: PanelClip) => Promise<ClipReading<PlainSamples>>
  readonly onPlayed: ((clip: PanelClip) => void) | undefined
}

/** Listening as long as the panel is there; silence when it goes. */
export function useListening({ clips, densities, samplesOf, onPlayed }: ListeningInput): {
  readonly listening: Listening<PanelClip>
  readonly state: ListeningState
} {
  const latest = useRef({ samplesOf, onPlayed })
  latest.current = { samplesOf, onPlayed }
  const [{ listening, player }] = useState(() => {
    const player = new Player(() => listening.ended())
    const listening: Listening<PanelClip> = new Listening({
      player,
      samplesOf: (clip) => latest.current.samplesOf(clip),
      onPlayed: (clip) => latest.current.onPlayed?.(clip),
    })
    listening.setClips(clips)
    return { listening, player }
  })
  const state = useSyncExternalStore(listening.subscribe, listening.get)
  useEffect(() => listening.setClips(clips), [listening, clips])
  useEffect(() => listening.setDensities(densities), [listening, densities])
  useEffect(() => {
    player.prepare()
    return () => player.close()
  }, [player])
  useEffect(() => {
    if (!state.playing) return
    let frame = requestAnimationFrame(function next() {
      listening.tick()
      frame = requestAnimationFrame(next)
    })
    return () => cancelAnimationFrame(frame)
  }, [listening, state.playing])
  return { listening, state }
}

/**
 * Shows where the clip is: at once, whenever it moves by hand, and with every frame while it plays.
 *
 * @param show Called with seconds; changes what is on the page by itself, as rendering sixty times a second is too much.
 */
export function usePosition(listening: Listening<PanelClip>, playing: boolean, show: (atS: number) => void): void {
  const latest = useRef(show)
  latest.current = show
  useEffect(() => {
    const showNow = () => latest.current(listening.positionS())
    showNow()
    const leave = listening.subscribe(showNow)
    if (!playing) return leave
    let frame = requestAnimationFrame(function next() {
      showNow()
      frame = requestAnimationFrame(next)
    })
    return () => {
      leave()
      cancelAnimationFrame(frame)
    }
  }, [listening, playing])
}
