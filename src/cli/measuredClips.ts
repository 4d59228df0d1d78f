import { createHash } from 'node:crypto'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { DETECTOR_FEATURES } from '../../shared/learn/detectorFeatures'
import { Analysts } from './analysts'
import { appendText, isThere, readText } from './files'
import type { ClipPlace } from './listen'
import type { MeasuredSound } from './measureSound'
import { clearProgress, showProgress } from './print'
import { VERSION } from './version'

/** A clip with its bytes' digest and what was measured of it. */
export interface MeasuredClip extends MeasuredSound {
  /** `null` for a clip that could not be opened. */
  readonly sha256: string | null
}

/** Another list of features or another program measures otherwise: its clips are kept apart. */
const LIST = createHash('sha256')
  .update(`${VERSION} ${DETECTOR_FEATURES.map(({ id }) => id).join(' ')}`)
  .digest('hex')
  .slice(0, 16)

/**
 * Measures clips, each content once and for all: what was measured is kept by its bytes' digest as it comes, so that whoever
 * is interrupted goes on from there.
 *
 * @param cache Folder of the kept measurements; `undefined`: that of the user.
 * @returns In the order of the clips.
 */
export async function measuredClips(clips: readonly ClipPlace[], cache: string | undefined): Promise<MeasuredClip[]> {
  const path = join(cache ?? userCache(), `measured-${LIST}.jsonl`)
  const kept = readKept(path)
  const analysts = new Analysts(clips.length)
  try {
    const digests = await analysts.sha256Of(clips, (done) => showProgress(`reading: ${done} of ${clips.length} clips`))
    const missing = new Map<string, ClipPlace>()
    for (const [i, clip] of clips.entries()) {
      const sha256 = digests[i]
      if (sha256 && !kept.has(sha256)) missing.set(sha256, clip)
    }
    const order = [...missing.keys()]
    await analysts.measure([...missing.values()], (done, index, sound) => {
      kept.set(order[index]!, sound)
      appendText(path, `${JSON.stringify({ sha256: order[index], ...sound })}\n`)
      showProgress(`listening: ${done} of ${order.length} clips, ${clips.length - order.length} known`)
    })
    const unopened = await analysts.measure(
      clips.filter((_, i) => digests[i] === null),
      () => {},
    )
    return digests.map((sha256) => ({ sha256: sha256 ?? null, ...(sha256 ? kept.get(sha256)! : unopened.shift()!) }))
  } finally {
    clearProgress()
    await analysts.close()
  }
}

function userCache(): string {
  return join(process.env['XDG_CACHE_HOME'] || join(homedir(), '.cache'), 'yardhark')
}

/** A line that does not read, as the last one of an interrupted run, is as if it were not there. */
function readKept(path: string): Map<string, MeasuredSound> {
  const kept = new Map<string, MeasuredSound>()
  if (!isThere(path)) return kept
  for (const line of readText(path, 'measured').split('\n')) {
    const entry = parsed(line)
    if (entry !== null) kept.set(entry.sha256, { values: entry.values, problems: entry.problems })
  }
  return kept
}

function parsed(line: string): (MeasuredSound & { sha256: string }) | null {
  try {
    const entry = JSON.parse(line) as MeasuredSound & { sha256: string }
    const isWhole =
      /^[0-9a-f]{64}$/.test(entry.sha256) &&
      Array.isArray(entry.problems) &&
      (entry.values === null ||
        (entry.values.length === DETECTOR_FEATURES.length &&
          entry.values.every((value) => value === null || Number.isFinite(value))))
    return isWhole ? entry : null
  } catch {
    return null
  }
}
