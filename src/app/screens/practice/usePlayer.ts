import { useCallback, useEffect, useState } from 'react'
import { Player, type Track } from '../../ears/player'

/** One player for a round: quiet at first, through the limiter, silent when the screen goes. */
export type RoundPlayer = ReturnType<typeof usePlayer>

export function usePlayer(): {
  readonly playing: string | null
  readonly played: ReadonlySet<string>
  readonly toggle: (track: Track) => void
  readonly stop: () => void
  /** Another question: silence, and nothing of it was played yet. */
  readonly reset: () => void
} {
  const [playing, setPlaying] = useState<string | null>(null)
  const [played, setPlayed] = useState<ReadonlySet<string>>(new Set())
  const [player] = useState(() => new Player(() => setPlaying(null)))
  useEffect(() => {
    player.prepare()
    return () => player.close()
  }, [player])
  const stop = useCallback(() => {
    player.pause()
    setPlaying(null)
  }, [player])
  return {
    playing,
    played,
    toggle: (track) => {
      if (playing === track.id) {
        player.pause()
        setPlaying(null)
        return
      }
      player.wake()
      setPlaying(track.id)
      setPlayed((before) => new Set([...before, track.id]))
      void player.play(track, { fromS: 0, loop: null, liftDb: 0 })
    },
    stop,
    reset: useCallback(() => {
      stop()
      setPlayed(new Set())
    }, [stop]),
  }
}
