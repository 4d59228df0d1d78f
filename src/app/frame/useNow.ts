import { useEffect, useState } from 'react'
import { useApp } from './useApp'

const TICK_MS = 500

/** Seconds since 1970, again twice a second while `isRunning`. */
export function useNow(isRunning: boolean): number {
  const { nowS } = useApp()
  const [now, setNow] = useState(nowS)
  useEffect(() => {
    if (!isRunning) return
    setNow(nowS())
    const timer = window.setInterval(() => setNow(nowS()), TICK_MS)
    return () => window.clearInterval(timer)
  }, [isRunning, nowS])
  return now
}
