import { Random } from '../base/random'
import type { Line } from '../line/line'
import { drawInlet, drawLeak, drawMachine, drawMovingAir, meanPsd, scaled } from './drawEmitters'
import { drawGround, type YardSize } from './drawGround'
import { drawWalk, type YardPoint } from './drawWalk'
import type { Family } from './families'
import { onGrid, totalPower } from './grid'
import type { Ground } from './ground'
import { overFloor } from './solveLevel'
import type { ClipPlan, Emitter, Yard, YardTruth } from './yard'

/**
 * A yard of a family.
 *
 * @param seed Any number or text: the same seed and family give the same yard, byte for byte.
 */
export function drawYard(family: Family, seed: number | string): Yard {
  const name = `${seed}/${family.name}`
  const stream = (part: string) => Random.named(name, part)
  const size = drawSize(family, stream('size'))
  const points = drawPoints(family, size, stream('points'))
  const leakM = drawLeakPlaces(family, size, stream('leaks'))
  const ground = drawGround(
    family,
    size.yard,
    leakM.map((leak) => leak.exitM),
    stream('ground'),
  )
  const floor = drawFloor(stream('floor'))
  const walk = drawWalk(family, points, stream('walk'))
  const site: Site = { family, size, ground, points, floorPsd: floor.ambientPsd.map((p, g) => p + floor.selfPsd[g]!) }
  const sources = drawSources(
    site,
    leakM.map((leak) => leak.exitM),
    stream('sources'),
  )
  const clips = anchorDrift(walk.clips, sources.nearest[0] ?? null)
  return {
    seed: name,
    family: family.name,
    ground,
    emitters: sources.emitters,
    floorPsd: floor.ambientPsd,
    selfNoisePsd: floor.selfPsd,
    told: tell(site, sources, stream('told')),
    clips,
    truth: {
      ...sources.truth,
      exitAlongM: leakM.map((leak) => leak.exitM),
      leakAlongM: leakM.map((leak) => leak.holeM),
      depthM: size.yard.depthM,
      spacingM: size.yard.spacingM,
      airOff: walk.airOff,
    },
  }
}

interface DrawnSize {
  readonly yard: YardSize
  readonly count: number
  readonly firstM: number
}

function drawSize(family: Family, random: Random): DrawnSize {
  const depthM = random.uniform(0.2, 1)
  const spacingM = depthM * random.uniform(...family.spacingOverDepth)
  const count = random.integer(10, 16)
  const firstM = spacingM * random.uniform(0, 0.5)
  const lengthM = firstM + (count - 1 + random.uniform(0, 0.5)) * spacingM
  return { yard: { depthM, spacingM, lengthM }, count, firstM }
}

function drawPoints(family: Family, { yard, count, firstM }: DrawnSize, random: Random): YardPoint[] {
  return Array.from({ length: count }, (_, i) => {
    const toldAlongM = Math.round((firstM + i * yard.spacingM) * 1000) / 1000
    const toldOffsetM = Math.round(random.normal(0, family.offsetSdDepths) * yard.depthM * 100) / 100
    const missM = () => random.normal(0, Math.min(0.02, 0.03 * yard.spacingM))
    return {
      number: i + 1,
      toldAlongM,
      toldOffsetM,
      spot: { alongM: toldAlongM + missM(), offsetM: toldOffsetM + missM() },
    }
  })
}

interface LeakPlace {
  readonly holeM: number
  readonly exitM: number
}

function drawLeakPlaces(family: Family, { yard }: DrawnSize, random: Random): LeakPlace[] {
  const { lengthM, spacingM } = yard
  const place = () => {
    const outer = random.uniform(0, 0.5) * spacingM
    if (random.chance(family.endShare)) return random.chance(0.5) ? outer : lengthM - outer
    return random.uniform(0, lengthM)
  }
  const holes: number[] = []
  while (holes.length < family.leaks) {
    const holeM = place()
    if (holes.every((other) => Math.abs(other - holeM) > 4 * spacingM)) holes.push(holeM)
  }
  return holes.map((holeM) => ({ holeM, exitM: holeM + random.uniform(-family.exitShiftM, family.exitShiftM) }))
}

/** Ambient noise: falls with frequency, the less the higher; level and slopes chosen. Self-noise: white. */
function drawFloor(random: Random): { ambientPsd: Float64Array; selfPsd: Float64Array } {
  const at500 = 10 ** (random.uniform(-105, -82) / 10)
  const low = random.uniform(1, 2.4)
  const high = random.uniform(0.3, 1.2)
  const bend = random.logUniform(300, 1500)
  const shape = (f: number) => (f / bend) ** -low + (f / bend) ** -high
  const ambientPsd = onGrid((f) => (at500 * shape(Math.max(f, 40))) / shape(500))
  const self = 10 ** (random.uniform(-125, -113) / 10)
  return { ambientPsd, selfPsd: onGrid(() => self) }
}

interface Site {
  readonly family: Family
  readonly size: DrawnSize
  readonly ground: Ground
  readonly points: readonly YardPoint[]
  readonly floorPsd: Float64Array
}

interface Sources {
  readonly emitters: readonly Emitter[]
  readonly nearest: readonly YardPoint[]
  readonly inletM: number | null
  readonly inletTold: boolean
  readonly pump: Emitter | null
  readonly truth: Pick<YardTruth, 'overFloorDb' | 'bestBandHz'>
}

function drawSources(site: Site, exitM: readonly number[], random: Random): Sources {
  const { family } = site
  const leaks = levelledLeaks(site, exitM, random)
  const inletM = random.chance(family.inletShare) ? drawInletPlace(site, random) : null
  const leak = leaks[0]?.emitter ?? null
  const emitters = leaks.map((levelled) => levelled.emitter)
  if (inletM !== null) emitters.push(levelledInlet(site, inletM, leaks[0] ?? null, random))
  if (inletM !== null && leak !== null && random.chance(family.movingShare)) {
    const moving = drawMovingAir(inletM, leak, random)
    const ratioDb = random.uniform(-15, -3)
    emitters.push(scaled(moving, (totalPower(meanPsd(leak)) / totalPower(meanPsd(moving))) * 10 ** (ratioDb / 10)))
  }
  const pump = random.chance(family.toldPumpShare) ? drawPump(site, [0, 15], [1, 3], random) : null
  if (pump !== null) emitters.push(pump)
  if (random.chance(family.untoldNoiseShare)) emitters.push(drawPump(site, [6, 25], [0.2, 2], random))
  return {
    emitters,
    nearest: leaks.map((levelled) => levelled.nearest),
    inletM,
    inletTold: family.inletShare === 1 || random.chance(0.8),
    pump,
    truth: {
      overFloorDb: leaks.map((levelled) => levelled.overFloorDb),
      bestBandHz: leaks.map((levelled) => levelled.bestBandHz),
    },
  }
}

interface LevelledLeak {
  readonly emitter: Emitter
  readonly nearest: YardPoint
  readonly overFloorDb: number
  readonly bestBandHz: number
}

function levelledLeaks(site: Site, exitM: readonly number[], random: Random): LevelledLeak[] {
  const firstDb = random.uniform(...site.family.overFloorDb)
  return exitM.map((alongM, index) => {
    const raw = drawLeak(site.family, alongM, site.size.yard.depthM, random)
    const secondDb = Math.min(Math.max(firstDb + random.uniform(-10, 10), 6), 30)
    const wantedDb = index === 0 ? firstDb : secondDb
    const nearest = nearestPoint(site.points, alongM)
    const { factor, bestBandHz } = levelFor(site, raw, nearest, wantedDb)
    return { emitter: scaled(raw, factor), nearest, overFloorDb: wantedDb, bestBandHz }
  })
}

/** What an emitter must be scaled by to stand so many dB over the floor, in its best band, at a point. */
function levelFor(site: Site, emitter: Emitter, point: YardPoint, wantedDb: number) {
  const now = overFloor(site.ground, emitter, point.spot, site.floorPsd)
  return { factor: 10 ** ((wantedDb - now.overFloorDb) / 10), bestBandHz: now.bestBand.midHz }
}

function nearestPoint(points: readonly YardPoint[], alongM: number): YardPoint {
  return points.reduce((a, b) => (Math.abs(b.spot.alongM - alongM) < Math.abs(a.spot.alongM - alongM) ? b : a))
}

/** Past an end of the line four times in five, else on it. */
function drawInletPlace({ size }: Site, random: Random): number {
  const { lengthM, spacingM } = size.yard
  const pastM = random.uniform(0.2, 2) * spacingM
  if (random.chance(0.2)) return random.uniform(0, lengthM)
  return random.chance(0.7) ? -pastM : lengthM + pastM
}

function levelledInlet(site: Site, inletM: number, leak: LevelledLeak | null, random: Random): Emitter {
  const raw = drawInlet(leak?.emitter ?? null, inletM, site.family, random)
  const leakDb = leak?.overFloorDb ?? random.uniform(...site.family.overFloorDb)
  const wantedDb = leakDb + random.uniform(...site.family.inletOverLeakDb)
  return scaled(raw, levelFor(site, raw, nearestPoint(site.points, inletM), wantedDb).factor)
}

function drawPump(
  site: Site,
  overFloorDb: readonly [number, number],
  besideM: readonly [number, number],
  random: Random,
) {
  const { lengthM } = site.size.yard
  const alongM = random.uniform(-0.1, 1.1) * lengthM
  const offsetM = random.uniform(...besideM) * (random.chance(0.5) ? 1 : -1)
  const raw = drawMachine(alongM, offsetM, random)
  return scaled(raw, levelFor(site, raw, nearestPoint(site.points, alongM), random.uniform(...overFloorDb)).factor)
}

/** Shifts the drift so that the point nearest the leak is heard at the level that was asked for. */
function anchorDrift(clips: readonly ClipPlan[], nearest: YardPoint | null): ClipPlan[] {
  const anchor = clips.find((clip) => clip.row.point === nearest?.number && clip.row.air === 'on')
  return clips.map((clip) => ({ ...clip, driftDb: clip.driftDb - (anchor?.driftDb ?? 0) }))
}

/** What the locator is told of the line. */
function tell(site: Site, sources: Sources, random: Random): Line {
  const { family, ground, size } = site
  const told = random.pick(family.toldDepth) * random.uniform(0.9, 1.1)
  const { route } = ground
  return {
    lengthM: size.yard.lengthM,
    depthM: size.yard.depthM * told,
    airInletM: sources.inletTold ? sources.inletM : null,
    vertices: Array.from(route.xM, (xM, i) => ({ xM, yM: route.yM[i]! })),
    routeSdM: null,
    stretches: ground.stretches.map(({ fromM, toM, cover }) => ({
      fromM,
      toM,
      cover,
      depthM: null,
      digCostPerM: null,
    })),
    fittings: [],
    noises: sources.pump === null ? [] : [{ atM: sources.pump.alongM, kind: 'pump' as const }],
    pipe: { nominalIn: 1.5, material: 'pvc' },
    unknown: {},
  }
}
