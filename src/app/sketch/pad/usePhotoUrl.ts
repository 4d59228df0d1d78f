import { useEffect, useState } from 'react'
import type { SitePhoto } from '../../../../shared/job/site'
import { useApp } from '../../frame/useApp'
import { loadSound } from '../../storage/sounds'

/** Longest side of what is painted, px. Chosen: a phone's picture is four times as large, and slow to move about. */
const MOST_SIDE_PX = 2000

/**
 * The photo as something to be painted, a copy of its bytes made small.
 *
 * @returns `null` until it is there; `'missing'` when it is not on this device, or cannot be read.
 */
export function usePhotoUrl(photo: Pick<SitePhoto, 'sha256'> | null): string | 'missing' | null {
  const { database } = useApp()
  const sha256 = photo?.sha256 ?? null
  const [shown, setShown] = useState<{ readonly sha256: string; readonly url: string } | null>(null)
  useEffect(() => {
    if (sha256 === null) return
    let url: string | null = null
    let isGone = false
    const show = async () => {
      const bytes = await loadSound(database, sha256)
      const small = bytes === null ? null : await smallCopy(new Blob([bytes]))
      if (isGone) return
      url = small && URL.createObjectURL(small)
      setShown({ sha256, url: url ?? 'missing' })
    }
    show().catch(() => !isGone && setShown({ sha256, url: 'missing' }))
    return () => {
      isGone = true
      if (url !== null) URL.revokeObjectURL(url)
    }
  }, [database, sha256])
  return shown?.sha256 === sha256 && sha256 !== null ? shown.url : null
}

async function smallCopy(bytes: Blob): Promise<Blob | null> {
  const whole = await createImageBitmap(bytes)
  const share = Math.min(1, MOST_SIDE_PX / Math.max(whole.width, whole.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(whole.width * share))
  canvas.height = Math.max(1, Math.round(whole.height * share))
  canvas.getContext('2d')?.drawImage(whole, 0, 0, canvas.width, canvas.height)
  whole.close()
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.85))
}
