import { describe, expect, it } from 'vitest'
import { drawYard } from '../../../shared/synth/drawYard'
import { familyNamed } from '../../../shared/synth/families'
import { hearing } from '../../../shared/synth/hearing'
import type { Yard } from '../../../shared/synth/yard'
import { yardUnknowns } from '../../../shared/synth/yardUnknowns'

/** Power of every emitter at every point, first to last. */
const heardIn = ({ ground, emitters, clips }: Yard) =>
  emitters.flatMap((emitter) =>
    clips.flatMap(({ spot }) =>
      [...hearing(ground, emitter, spot)].map((power, g) => power * (emitter.hissPsd?.[g] ?? 1)),
    ),
  )

describe.each(['plain', 'slab', 'inlet', 'pipe path'])('what is not told of a yard of %s', (name) => {
  // In these every stretch has a point, so that its cover is heard.
  const yard = drawYard(familyNamed(name)!, 1)
  const before = heardIn(yard)

  it('changes what is heard, each by itself, and leaves the yard as it was', () => {
    const without = yardUnknowns(yard).filter(({ changed, step }) => {
      const after = heardIn(changed(yard, step))
      return after.every((power, i) => power === before[i])
    })
    expect(without).toEqual([])
    expect(heardIn(yard)).toEqual(before)
  })

  it('changes nothing for a change of none', () => {
    for (const { changed } of yardUnknowns(yard)) expect(heardIn(changed(yard, 0))).toEqual(before)
  })
})

it('has depth the less sure the more wrong a family tells it', () => {
  const depthSd = (name: string) => {
    const yard = drawYard(familyNamed(name)!, 1)
    const leakDepthM = ({ emitters }: Yard) => emitters.find(({ kind }) => kind === 'leak')!.depthM
    const moving = yardUnknowns(yard).filter(
      ({ changed, step }) => leakDepthM(changed(yard, step)) !== leakDepthM(yard),
    )
    expect(moving).toHaveLength(1)
    return moving[0]!.sd
  }
  expect(depthSd('depth wrong')).toBeGreaterThan(3 * depthSd('plain'))
})

it('has one level along the pipe for leak and inlet, as they were drawn', () => {
  const yard = drawYard({ ...familyNamed('inlet')! }, 1)
  const levels = ({ emitters }: Yard) => emitters.flatMap(({ pipeDb }) => (pipeDb === null ? [] : [pipeDb]))
  expect(levels(yard)).toHaveLength(2)
  const moving = yardUnknowns(yard)
    .map(({ changed, step }) => levels(changed(yard, step)))
    .filter((after) => after.some((db, i) => db !== levels(yard)[i]))
  expect(moving).toHaveLength(1)
  expect(new Set(moving[0]).size).toBe(1)
})
