import type { Problem } from '../base/problem'
import type { PhoneAccount } from './phoneAccount'

export const CONTACTS = ['spike', 'plate', 'hand', 'other'] as const
export type Contact = (typeof CONTACTS)[number]

/**
 * One clip of a sweep as the sheet tells it. Clips of one `point`, `take` and `sweep` were made without lifting the
 * microphone: one setting-down. Without a `take` column each row is a setting-down of its own (`take` still reads 1,
 * `sharedTake` false).
 */
export interface SweepRow {
  readonly point: number
  readonly alongM: number
  /** Path relative to the folder, with forward slashes; never leaves the folder. */
  readonly file: string
  readonly air: 'on' | 'off'
  readonly take: number
  /** True when a take column said that on and off share a setting-down. */
  readonly sharedTake: boolean
  readonly sweep: string
  /** Off the line, positive to the left looking from start to end, m. */
  readonly offsetM: number
  /** Seconds since 1970-01-01 UTC; `null` when not told. */
  readonly timeS: number | null
  readonly contact: Contact | null
  readonly airKpa: number | null
  readonly note: string
  /** What a phone said against its own recording; not there: the sheet tells nothing of that. */
  readonly phone?: PhoneAccount
  /** Columns this version does not know, kept. */
  readonly unknown: Readonly<Record<string, string>>
}

/** A sweep folder as told, before any clip was opened. */
export interface Sweep {
  readonly rows: readonly SweepRow[]
  /** Warnings of sheet and names: files left out, unknown values. */
  readonly problems: readonly Problem[]
}
