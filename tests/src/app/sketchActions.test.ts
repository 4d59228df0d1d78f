import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import { readJob } from '../../../shared/job/readJob'
import type { Sign } from '../../../shared/job/signs'
import type { SitePhoto } from '../../../shared/job/site'
import { lineCorners } from '../../../shared/line/lineCorners'
import { linePath } from '../../../shared/line/linePath'
import { placeAlong } from '../../../shared/line/placeAlong'
import { readLineJson } from '../../../shared/line/readLineJson'
import { readSweepCsv } from '../../../shared/sweep/readSweepCsv'
import type { Action } from '../../../src/app/store/action'
import { addPoint } from '../../../src/app/store/actions/addPoint'
import { changeRoute } from '../../../src/app/store/actions/changeRoute'
import { changeSign } from '../../../src/app/store/actions/changeSign'
import { changeSnap } from '../../../src/app/store/actions/changeSnap'
import { drawCorners } from '../../../src/app/store/actions/drawCorners'
import { layPoints } from '../../../src/app/store/actions/layPoints'
import { movePhoto } from '../../../src/app/store/actions/movePhoto'
import { movePoint } from '../../../src/app/store/actions/movePoint'
import { nameEnds } from '../../../src/app/store/actions/nameEnds'
import { pinSign } from '../../../src/app/store/actions/pinSign'
import { placeStart } from '../../../src/app/store/actions/placeStart'
import { putPhoto } from '../../../src/app/store/actions/putPhoto'
import { removePoint } from '../../../src/app/store/actions/removePoint'
import { removeSign } from '../../../src/app/store/actions/removeSign'
import { renumberPoints } from '../../../src/app/store/actions/renumberPoints'
import { scalePhoto } from '../../../src/app/store/actions/scalePhoto'
import { turnPhoto } from '../../../src/app/store/actions/turnPhoto'
import { FIRST_STATE } from '../../../src/app/store/state'
import { Store } from '../../../src/app/store/store'
import { close } from '../../support/close'

const demo = resolve(import.meta.dirname, '../../../demo-audio')
const { rows } = readSweepCsv(readFileSync(resolve(demo, 'sweep.csv'), 'utf8'), 'sweep.csv')
const DEMO_LINE = readLineJson(readFileSync(resolve(demo, 'line.json'), 'utf8'), 'line.json').line
const lineId = 'line'
const SIGN: Sign = { id: 'sign', kind: 'wet patch', alongM: 8, offsetM: 0.5, note: '' }
const PHOTO: SitePhoto = {
  sha256: 'a'.repeat(64),
  bytes: 1000,
  widthPx: 1000,
  heightPx: 800,
  mPerPx: 0.01,
  scaleTold: false,
  centre: { xM: 0, yM: 0 },
}
const rounding = { abs: 1e-9, because: 'rounding' }

function storeOf(line = DEMO_LINE, withClips = false) {
  const clips = rows.map((row) => ({ row, sound: null, problems: [] }))
  const job: Job = {
    id: 'job',
    name: 'Yard',
    createdS: 1,
    changedS: 1,
    lines: [
      {
        id: lineId,
        name: 'Line 1',
        line,
        problems: [],
        sweeps: withClips ? [{ id: 'sweep', name: '1', clips, problems: [] }] : [],
        confirmations: [],
      },
    ],
  }
  const store = new Store({ ...FIRST_STATE, job }, () => 2)
  return { store, line: () => store.get().job!.lines[0]! }
}

describe('sketching', () => {
  it('can all be taken back and done again, is one step each, and is kept by the job’s file', () => {
    const { store, line } = storeOf(readLineJson({}, 'line.json').line)
    const points = [
      { point: 1, alongM: 0, offsetM: 0 },
      { point: 2, alongM: 4, offsetM: 0 },
    ]
    const corners = [
      { xM: 1, yM: 1 },
      { xM: 6, yM: 1 },
      { xM: 6, yM: 4 },
    ]
    const steps: ((s: Store) => void)[] = [
      dispatched(placeStart, { lineId, startAt: corners[0]! }),
      dispatched(drawCorners, { lineId, corners: corners.slice(0, 2) }),
      dispatched(drawCorners, { lineId, corners }),
      dispatched(nameEnds, { lineId, end: 'startName' as const, name: 'filter room' }),
      dispatched(nameEnds, { lineId, end: 'endName' as const, name: 'basin' }),
      dispatched(changeSnap, { lineId, snapDeg: 22.5 }),
      dispatched(changeRoute, { lineId, routeSdM: 0.5, routeWay: 'paced' as const }),
      dispatched(layPoints, { lineId, points }),
      dispatched(addPoint, { lineId, point: { point: 3, alongM: 2, offsetM: 0 } }),
      dispatched(movePoint, { lineId, point: { point: 3, alongM: 2.5, offsetM: -0.5 } }),
      dispatched(renumberPoints, { lineId }),
      dispatched(removePoint, { lineId, point: 1 }),
      dispatched(pinSign, { lineId, sign: SIGN }),
      dispatched(changeSign, { lineId, sign: { ...SIGN, kind: 'bare ear' as const, note: 'gurgles' } }),
      dispatched(putPhoto, { lineId, photo: PHOTO }),
      dispatched(movePhoto, { lineId, centre: { xM: 2, yM: 3 } }),
      dispatched(turnPhoto, { lineId, turnDeg: -90 }),
      dispatched(scalePhoto, { lineId, factor: 1.5, about: { xM: 1, yM: 1 }, alsoLine: true }),
      dispatched(removeSign, { lineId, signId: SIGN.id }),
      dispatched(putPhoto, { lineId, photo: null }),
    ]
    const seen = [line()]
    for (const step of steps) {
      step(store)
      seen.push(line())
      const { job } = store.get()
      expect(readJob(JSON.stringify(jobJson(job!)), 'job.json')).toEqual(withoutEmpty(job!))
    }
    expect(store.get().undo).toHaveLength(steps.length)
    for (let i = steps.length - 1; i >= 0; i--) {
      store.undo()
      expect(line()).toBe(seen[i])
    }
    for (let i = 1; i <= steps.length; i++) {
      store.redo()
      expect(line()).toBe(seen[i])
    }
  })

  it('of corners leaves signs on their own ground, and points at their distance along', () => {
    const { store, line } = storeOf()
    store.dispatch(pinSign, { lineId, sign: SIGN })
    store.dispatch(layPoints, { lineId, points: [{ point: 1, alongM: 8, offsetM: 0 }] })
    const was = placeAlong(linePath(DEMO_LINE), SIGN.alongM, SIGN.offsetM)
    const corners = lineCorners(DEMO_LINE).map(({ xM, yM }, i) => ({ xM: i === 0 ? xM : xM + 0.3, yM }))
    store.dispatch(drawCorners, { lineId, corners })
    const [sign] = line().signs!
    const now = placeAlong(linePath(line().line), sign!.alongM, sign!.offsetM)
    close(Math.hypot(now.xM - was.xM, now.yM - was.yM), 0, { abs: 1e-6, because: 'held to a micrometre' })
    expect(line().plannedPoints![0]!.alongM).toBe(8)
  })

  it('of points moves the clips of one that was heard, and numbers none of them anew', () => {
    const { store, line } = storeOf(DEMO_LINE, true)
    store.dispatch(layPoints, { lineId, points: [{ point: 99, alongM: 3.3, offsetM: 0 }] })
    const { sweeps } = line()
    store.dispatch(movePoint, { lineId, point: { point: 99, alongM: 3.5, offsetM: 0 } })
    expect(line().sweeps).toBe(sweeps)
    store.dispatch(movePoint, { lineId, point: { point: 3, alongM: 2.05, offsetM: 0.2 } })
    const clips = line().sweeps[0]!.clips.filter(({ row }) => row.point === 3)
    expect(clips.length).toBeGreaterThan(0)
    expect(clips.every(({ row }) => row.alongM === 2.05 && row.offsetM === 0.2)).toBe(true)
    const before = line()
    store.dispatch(renumberPoints, { lineId })
    expect(line()).toBe(before)
  })
})

it('a photo is turned all the way round, clockwise', () => {
  const { store, line } = storeOf()
  store.dispatch(putPhoto, { lineId, photo: PHOTO })
  const turned = [90, 180, 270, -180, 360].map((turnDeg) => {
    store.dispatch(turnPhoto, { lineId, turnDeg })
    return line().site!.photo!.turnDeg ?? 0
  })
  expect(turned).toEqual([90, 180, -90, 180, 0])
  expect(line().site!.photo).toEqual(PHOTO)
})

describe('the scale of a photo', () => {
  it('set by a distance keeps the place it was set from, and the line as it was', () => {
    const { store, line } = storeOf()
    store.dispatch(putPhoto, { lineId, photo: PHOTO })
    store.dispatch(scalePhoto, { lineId, factor: 2, about: { xM: 1, yM: -1 }, alsoLine: false })
    const { photo } = line().site!
    expect(photo).toMatchObject({ mPerPx: 0.02, scaleTold: true, centre: { xM: -1, yM: 1 } })
    expect(line().line).toBe(DEMO_LINE)
  })

  it('takes the line with it when it was drawn over the photo', () => {
    const { store, line } = storeOf()
    store.dispatch(putPhoto, { lineId, photo: PHOTO })
    store.dispatch(pinSign, { lineId, sign: SIGN })
    store.dispatch(scalePhoto, { lineId, factor: 2, about: { xM: 0, yM: 0 }, alsoLine: true })
    close(line().line.lengthM!, 2 * DEMO_LINE.lengthM!, rounding)
    close(linePath(line().line).alongM.at(-1)!, 2 * DEMO_LINE.lengthM!, rounding)
    expect(line().line.stretches.map(({ toM }) => toM)).toEqual(DEMO_LINE.stretches.map(({ toM }) => 2 * toM))
    expect(line().signs![0]).toMatchObject({ alongM: 16, offsetM: 1 })
  })
})

function dispatched<Input>(action: Action<Input>, input: Input): (store: Store) => void {
  return (store) => {
    store.dispatch(action, input)
    store.closeStep()
  }
}

/** A list of nothing is not written. */
function withoutEmpty(job: Job): Job {
  const lines = job.lines.map(({ signs, ...line }) =>
    signs?.length === 0 ? line : { ...line, ...(signs && { signs }) },
  )
  return { ...job, lines }
}
