import type { HoldVerdict } from '../pressure/holdVerdicts'
import type { MendPart } from './mend'
import type { PressureTest } from './pressureTests'

/** What is known of a part: the verdict of its last test, as it was kept when that was closed. */
export type PartProof =
  | { readonly state: 'not tested' | 'test open' }
  | { readonly state: HoldVerdict; readonly test: PressureTest }

/**
 * The proof of a part. Only a test that was closed counts, and a part that was proved and tested again is as the last
 * test says.
 */
export function partProof(part: Pick<MendPart, 'testIds'>, tests: readonly PressureTest[]): PartProof {
  const own = part.testIds.flatMap((id) => tests.find((test) => test.id === id) ?? [])
  const last = own.at(-1)
  if (last === undefined) return { state: 'not tested' }
  return last.kept === null ? { state: 'test open' } : { state: last.kept.verdict, test: last }
}
