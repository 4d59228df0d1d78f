import type { AppState } from '../store/state'

/** True while a page that is loaded anew would break something off: a clip, an opening, a save, another tab's work. */
export function isUnderWay({ session }: AppState): boolean {
  const { readOnly, handingOver, recording, opening, joining, saving } = session
  return readOnly || handingOver || recording || opening !== null || joining !== null || saving.state === 'failed'
}
