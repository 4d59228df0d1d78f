import type { ClipEvidence } from '../../evidence/evidence'
import { type LocateInput, locate } from '../../locate/locate'
import { grade } from './grade'
import type { MachineSaid, QuestionClip } from './question'

/** From here on the machine says that it bubbles: the middle of its scale. */
export const MACHINE_SAYS_FROM = 0.5

/** What it makes of one clip: its bubbling, as `clipEvidence` has it and the benches print it. */
export function machineOnSound(
  { bubbling }: Pick<ClipEvidence, 'bubbling'>,
  [yes, no]: readonly [string, string],
  truth: string,
): MachineSaid {
  const said = bubbling >= MACHINE_SAYS_FROM ? yes : no
  return { said, right: said === truth, bubbling, errorSpacings: null }
}

/** Of two clips it takes the one that bubbles more surely; where both do, the one with more rings. */
export function machineOnTwo(clips: readonly QuestionClip[], truth: string): MachineSaid {
  const [a, b] = clips.map(({ evidence }) => evidence.bubbling + evidence.rings.ratePerS * 1e-3)
  const said = a! >= b! ? 'A' : 'B'
  return { said, right: said === truth, bubbling: null, errorSpacings: null }
}

/** On a line of points it locates, as on the screen Place. */
export function machineOnPlace(input: LocateInput, asPoints: (alongM: number) => number, truth: string): MachineSaid {
  const [source] = locate(input).sources
  if (source === undefined) return { said: 'no leak heard', right: false, bubbling: null, errorSpacings: null }
  const said = asPoints(source.alongM).toFixed(2)
  return { said, ...grade('place', truth, said), bubbling: null }
}
