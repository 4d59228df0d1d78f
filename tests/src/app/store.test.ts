import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../../shared/job/job'
import { readLineJson } from '../../../shared/line/readLineJson'
import { rowsFromNames } from '../../../shared/sweep/rowsFromNames'
import { changeDepth } from '../../../src/app/store/actions/changeDepth'
import { changeLegs } from '../../../src/app/store/actions/changeLegs'
import { changeSpacing } from '../../../src/app/store/actions/changeSpacing'
import { changeUnits } from '../../../src/app/store/actions/changeUnits'
import { removeLine } from '../../../src/app/store/actions/removeLine'
import { renameJob } from '../../../src/app/store/actions/renameJob'
import { withSession } from '../../../src/app/store/changes'
import { FIRST_STATE } from '../../../src/app/store/state'
import { Store } from '../../../src/app/store/store'

const JOB: Job = {
  id: 'job',
  name: 'Yard',
  createdS: 1,
  changedS: 1,
  lines: [
    {
      id: 'line',
      name: 'Line 1',
      line: readLineJson({ length_m: 10 }, 'line.json').line,
      problems: [],
      sweeps: [],
      confirmations: [],
    },
  ],
}

function storeOfJob() {
  let nowS = 100
  const store = new Store({ ...FIRST_STATE, job: JOB }, () => nowS++)
  const depth = () => store.get().job!.lines[0]!.line.depthM
  return { store, depth, deepen: (depthM: number | null) => store.dispatch(changeDepth, { lineId: 'line', depthM }) }
}

describe('a change of the job', () => {
  it('is told to whoever listens, once, and not at all when nothing changes', () => {
    const { store, deepen } = storeOfJob()
    let told = 0
    const leave = store.subscribe(() => told++)
    deepen(0.5)
    deepen(0.5)
    expect(told).toBe(1)
    leave()
    deepen(0.6)
    expect(told).toBe(1)
  })

  it('notes the time, and shares with the job before what stayed', () => {
    const { store, deepen } = storeOfJob()
    deepen(0.5)
    expect(store.get().job!.changedS).toBe(100)
    expect(store.get().job!.lines[0]!.sweeps).toBe(JOB.lines[0]!.sweeps)
    expect(JOB.lines[0]!.line.depthM).toBeNull()
  })

  it('that is typed is one step back; what follows when the field was left is another', () => {
    const { store, depth, deepen } = storeOfJob()
    deepen(5)
    deepen(5.1)
    store.closeStep()
    deepen(0.4)
    store.undo()
    expect(depth()).toBe(5.1)
    store.undo()
    expect(depth()).toBeNull()
    expect(store.get().undo).toEqual([])
  })

  it('of another kind is a step of its own', () => {
    const { store, depth, deepen } = storeOfJob()
    deepen(5)
    store.dispatch(renameJob, 'Garden')
    deepen(6)
    store.undo()
    store.undo()
    expect([depth(), store.get().job!.name]).toEqual([5, 'Yard'])
  })

  it('is refused where another tab has the jobs', () => {
    const { store, depth, deepen } = storeOfJob()
    deepen(1)
    store.update((state) => withSession(state, { readOnly: true }))
    deepen(2)
    store.undo()
    expect(depth()).toBe(1)
    store.dispatch(changeUnits, { length: 'ft', pressure: 'psi' })
    expect(store.get().device.units.length).toBe('ft')
  })

  it('of a line that is not there changes nothing', () => {
    const { store } = storeOfJob()
    store.dispatch(changeDepth, { lineId: 'other', depthM: 1 })
    store.dispatch(removeLine, 'other')
    expect(store.get().job).toBe(JOB)
  })
})

describe('undo and redo', () => {
  const step = fc.oneof(
    fc.record({ kind: fc.constant('deepen' as const), value: fc.integer({ min: 1, max: 19 }) }),
    fc.record({ kind: fc.constant('rename' as const), value: fc.integer({ min: 1, max: 9 }) }),
    fc.record({ kind: fc.constant('stretch' as const), value: fc.integer({ min: 1, max: 99 }) }),
    fc.record({ kind: fc.constant('close' as const), value: fc.constant(0) }),
  )

  it('lead back to the first job and forward to the last, whatever was done (seed 3)', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const { store, deepen } = storeOfJob()
        for (const { kind, value } of steps) {
          if (kind === 'deepen') deepen(value)
          else if (kind === 'rename') store.dispatch(renameJob, `Yard ${value}`)
          else if (kind === 'close') store.closeStep()
          else store.dispatch(changeLegs, { lineId: 'line', legs: [{ lengthM: value, turnDeg: 0 }] })
        }
        const last = { ...store.get().job!, changedS: 0 }
        const count = store.get().undo.length
        for (let i = 0; i < count; i++) store.undo()
        expect({ ...store.get().job!, changedS: 1 }).toEqual(JOB)
        for (let i = 0; i < count; i++) store.redo()
        expect({ ...store.get().job!, changedS: 0 }).toEqual(last)
      }),
      { seed: 3, numRuns: 200 },
    )
  })

  it('have nothing more to take back or to do again at their ends', () => {
    const { store, deepen } = storeOfJob()
    store.undo()
    expect(store.get().job).toBe(JOB)
    deepen(1)
    store.undo()
    deepen(2)
    store.redo()
    expect(store.get().redo).toEqual([])
    expect(store.get().job!.lines[0]!.line.depthM).toBe(2)
  })
})

describe('the spacing of a sweep', () => {
  const sweepOf = (id: string, alongsM: readonly number[]) => {
    const { rows } = rowsFromNames(
      alongsM.map((_, i) => `${i + 6}.wav`),
      { startM: 0, spacingM: 1 },
    )
    const clips = rows.map((row, i) => ({ row: { ...row, alongM: alongsM[i]! }, sound: null, problems: [] }))
    return { id, name: id, clips, problems: [] }
  }
  const job: Job = {
    ...JOB,
    lines: [{ ...JOB.lines[0]!, sweeps: [sweepOf('even', [0, 150, 300]), sweepOf('taped', [0, 1, 2.3])] }],
  }
  const store = new Store({ ...FIRST_STATE, job }, () => 1)
  const alongs = (i: number) => store.get().job!.lines[0]!.sweeps[i]!.clips.map(({ row }) => row.alongM)
  const respace = (sweepId: string, startM: number, spacingM: number) =>
    store.dispatch(changeSpacing, { lineId: 'line', sweepId, layout: { startM, spacingM } })

  it('that was told wrong moves its points, and taking it back moves them back', () => {
    respace('even', 0, 1)
    respace('even', 0.5, 1.5)
    expect(alongs(0)).toEqual([0.5, 2, 3.5])
    store.undo()
    expect(alongs(0)).toEqual([0, 150, 300])
  })

  it('leaves points where a tape placed them', () => {
    const before = store.get()
    respace('taped', 0, 2)
    expect(store.get()).toBe(before)
  })
})
