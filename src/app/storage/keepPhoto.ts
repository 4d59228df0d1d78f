import type { SitePhoto } from '../../../shared/job/site'
import type { Keyed } from '../../../shared/words/sentence'
import { type Database, isFull } from './database'
import { keepSound } from './sounds'

/** Largest photo that is kept. Chosen: a camera's JPEG at its finest is half of it. */
const MOST_BYTES = 40e6

/** Across a photo before anybody told a distance on it, m. Chosen: a yard. */
const GUESSED_ACROSS_M = 10

/**
 * Keeps a photo's bytes as they came, and says how large it is.
 *
 * @returns The photo with a guessed scale and its middle at the sketch's own; or what is wrong with it.
 */
export async function keepPhoto(
  database: Database,
  file: Blob,
): Promise<{ readonly photo: SitePhoto } | { readonly trouble: Keyed }> {
  if (file.size > MOST_BYTES) {
    const values = { size_mb: Math.round(file.size / 1e6), most_mb: MOST_BYTES / 1e6 }
    return { trouble: { key: 'photo_too_large', values } }
  }
  const size = await sizeOf(file)
  if (size === null) return { trouble: { key: 'photo_unreadable', values: {} } }
  try {
    const kept = await keepSound(database, file)
    const mPerPx = GUESSED_ACROSS_M / size.widthPx
    return { photo: { ...kept, ...size, mPerPx, scaleTold: false, centre: { xM: 0, yM: 0 } } }
  } catch (error) {
    return { trouble: { key: isFull(error) ? 'photo_no_room' : 'photo_not_kept', values: {} } }
  }
}

/** As it is shown, turned as the camera says; `null` for what is no picture. */
async function sizeOf(file: Blob): Promise<{ readonly widthPx: number; readonly heightPx: number } | null> {
  try {
    const picture = await createImageBitmap(file)
    const size = { widthPx: picture.width, heightPx: picture.height }
    picture.close()
    return size
  } catch {
    return null
  }
}
