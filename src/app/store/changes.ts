import type { JobLine } from '../../../shared/job/job'
import type { AppState, Device, Session } from './state'

/** The state with part of its session changed. */
export function withSession(state: AppState, change: Partial<Session>): AppState {
  return { ...state, session: { ...state.session, ...change } }
}

/** The state with part of its device settings changed. */
export function withDevice(state: AppState, change: Partial<Device>): AppState {
  return { ...state, device: { ...state.device, ...change } }
}

/** The state with one line of its job changed; the same state when nothing changed or the line is not there. */
export function withLine(state: AppState, lineId: string, change: (line: JobLine) => JobLine): AppState {
  if (state.job === null) return state
  const lines = state.job.lines.map((line) => (line.id === lineId ? change(line) : line))
  const isSame = lines.every((line, i) => line === state.job!.lines[i])
  return isSame ? state : { ...state, job: { ...state.job, lines } }
}
