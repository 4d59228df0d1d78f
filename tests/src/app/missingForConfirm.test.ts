import { describe, expect, it } from 'vitest'
import { noteExamined } from '../../../src/app/store/actions/noteExamined'
import { missingForConfirm } from '../../../src/app/store/selectors/missingForConfirm'
import { FIRST_STATE } from '../../../src/app/store/state'
import { answerOf, pointsAt, sourceAt } from '../../shared/sketch/sketches'

const points = pointsAt([4, 2, 6, 0])
const source = sourceAt(4, [3, 5], { key: 'tape_at_point', values: { point: 1 } })
const answer = answerOf(points, 'located', [source])

function having(...did: readonly (readonly [number, 'looked' | 'played'])[]) {
  const state = did.reduce(
    (before, [point, how]) => noteExamined.perform(before, { lineId: 'a', point, how }),
    FIRST_STATE,
  )
  return missingForConfirm(answer, state.session.examined.a)
}

describe('confirming by ear', () => {
  it('asks for the spectrum of the best point, its sound, and that of one point beside it', () => {
    expect(having()).toEqual({ bestPoint: 1, flanks: [2, 3], looked: false, played: false, flankPlayed: false })
    expect(having([1, 'looked'])).toMatchObject({ looked: true, played: false, flankPlayed: false })
    expect(having([1, 'played'])).toMatchObject({ looked: false, played: true, flankPlayed: false })
    expect(having([3, 'played'])).toMatchObject({ looked: false, played: false, flankPlayed: true })
    expect(having([1, 'looked'], [1, 'played'], [2, 'played'])).toMatchObject({
      looked: true,
      played: true,
      flankPlayed: true,
    })
  })

  it('does not take a point further off for one beside it', () => {
    expect(having([4, 'played'])).toMatchObject({ flankPlayed: false })
  })

  it('passes over points of which no clip could be used', () => {
    const deaf = answer.points.map((point) =>
      point.point === 2 ? { ...point, evidence: { ...point.evidence, clipsUsed: 0 } } : point,
    )
    expect(missingForConfirm({ ...answer, points: deaf }, undefined)?.flanks).toEqual([4, 3])
  })

  it('has nothing to ask where no place is named', () => {
    expect(missingForConfirm({ ...answer, sources: [] }, undefined)).toBeNull()
  })

  it('keeps what was done on one line away from another', () => {
    const state = noteExamined.perform(FIRST_STATE, { lineId: 'b', point: 1, how: 'looked' })
    expect(missingForConfirm(answer, state.session.examined.a)?.looked).toBe(false)
  })
})
