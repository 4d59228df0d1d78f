import type { JobLine } from '../../../../shared/job/job'
import type { PressureTest } from '../../../../shared/job/pressureTests'

/** What every part of a test's form gets. */
export interface TestPartProps {
  readonly line: JobLine
  readonly test: PressureTest
  /** Nothing can be changed: another tab has the job, or the test was closed. */
  readonly disabled: boolean
}

/** A pressure as it is read on a gauge of this step: as many figures after the point as the step has. */
export function gaugeText(value: number, resolution: number): string {
  const decimals = /\.(\d+)$/.exec(String(resolution))?.[1]?.length ?? 0
  return value.toFixed(Math.min(6, decimals))
}

/** Seconds as a clock shows them: `3:05`; with a minus before the start. */
export function clockText(timeS: number): string {
  const whole = Math.floor(Math.abs(timeS))
  const sign = timeS < 0 && whole > 0 ? '-' : ''
  return `${sign}${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}
