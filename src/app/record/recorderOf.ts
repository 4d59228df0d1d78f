import type { App } from '../startApp'
import { Recorder } from './recorder'

const RECORDERS = new WeakMap<App, Recorder>()

/** The one recorder of the page, made when it is first asked for. */
export function recorderOf(app: App): Recorder {
  const before = RECORDERS.get(app)
  if (before !== undefined) return before
  const recorder = new Recorder({ ...app, findLeft: () => app.left.find() })
  RECORDERS.set(app, recorder)
  return recorder
}
