import type { JobLine } from '../../../shared/job/job'
import type { PlannedPoint } from '../../../shared/job/plannedPoints'
import type { PressureTest } from '../../../shared/job/pressureTests'
import type { Sign } from '../../../shared/job/signs'
import { BARE_SITE, type Site } from '../../../shared/job/site'
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

/** The state with what was told of a line's surroundings changed; the same state when nothing of it is other. */
export function withSite(state: AppState, lineId: string, change: Partial<Site>): AppState {
  return withLine(state, lineId, (line) => {
    const site = line.site ?? BARE_SITE
    const isSame = Object.entries(change).every(([key, value]) => site[key as keyof Site] === value)
    return isSame ? line : { ...line, site: { ...site, ...change } }
  })
}

/** The state with other points laid on a line, by rising number; the same state when they are the same. */
export function withPoints(
  state: AppState,
  lineId: string,
  change: (points: readonly PlannedPoint[], line: JobLine) => readonly PlannedPoint[],
): AppState {
  return withLine(state, lineId, (line) => {
    const before = line.plannedPoints ?? []
    const plannedPoints = [...change(before, line)].sort((a, b) => a.point - b.point)
    const isSame = plannedPoints.length === before.length && plannedPoints.every((each, i) => each === before[i])
    return isSame ? line : { ...line, plannedPoints }
  })
}

/** The state with other signs pinned to a line. */
export function withSigns(
  state: AppState,
  lineId: string,
  change: (signs: readonly Sign[]) => readonly Sign[],
): AppState {
  return withLine(state, lineId, (line) => ({ ...line, signs: change(line.signs ?? []) }))
}

/** The state with one pressure test of a line changed. */
export function withPressureTest(
  state: AppState,
  { lineId, testId }: { readonly lineId: string; readonly testId: string },
  change: (test: PressureTest) => PressureTest,
): AppState {
  return withLine(state, lineId, (line) => ({
    ...line,
    pressureTests: (line.pressureTests ?? []).map((test) => (test.id === testId ? change(test) : test)),
  }))
}
