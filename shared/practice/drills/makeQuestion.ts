import { Random } from '../../base/random'
import { gaugeQuestion } from './gaugeQuestion'
import { machineOnPlace, machineOnSound, machineOnTwo } from './machineSaid'
import { mixedClips, questionClip } from './mixedClips'
import { practiceYard, soundPair, withoutAir } from './practiceYard'
import { PLACE_POINTS, type Question, type QuestionOrder, SOUND_KINDS } from './question'

/**
 * Makes a question out of the synthetic yard: everything in it is invented.
 *
 * @param order The same order gives the same question.
 */
export function makeQuestion(order: QuestionOrder): Question {
  return MAKERS[order.drill](order, Random.named(order.seed, 'question'))
}

type Maker = (order: QuestionOrder, random: Random) => Question

const MAKERS: Readonly<Record<QuestionOrder['drill'], Maker>> = {
  leak: leakQuestion,
  nearer: nearerQuestion,
  what: whatQuestion,
  place: placeQuestion,
  gauge: gaugeQuestion,
}

/** Half of them hold a leak; what else may be there (a step, a gust, rain) is in either alike. */
function leakQuestion(order: QuestionOrder, random: Random): Question {
  const truth = random.chance(0.5) ? 'leak' : 'no leak'
  const { yard, plans, nearest } = practiceYard(order.seed)
  const nuisances = random.chance(0.3) ? [random.pick(['footsteps', 'gusts', 'rain'] as const)] : []
  const plan = { ...plans[nearest]!, nuisances }
  const pair = { name: '', withIt: { yard, plan }, withoutIt: { yard, plan: withoutAir(plan) } }
  const [mixed] = mixedClips([pair], 0, order.levelDb)
  const clip = truth === 'leak' ? mixed! : silentOf(mixed!)
  return {
    order,
    truth,
    clips: [clip],
    gauge: null,
    machine: machineOnSound(clip.evidence, ['leak', 'no leak'], truth),
  }
}

/** The clip without its leak, as if it had been taken so. */
function silentOf({ name, without }: Question['clips'][number]) {
  return questionClip(name, without!, without!)
}

function nearerQuestion(order: QuestionOrder, random: Random): Question {
  const { yard, plans, nearest, leakM } = practiceYard(order.seed)
  const away = nearest === 0 || (nearest < plans.length - 1 && plans[nearest]!.row.alongM > leakM) ? 1 : -1
  const far = nearest + away * (nearest + 2 * away >= 0 && nearest + 2 * away < plans.length ? random.integer(1, 2) : 1)
  const truth = random.pick(['A', 'B'] as const)
  const indices = truth === 'A' ? [nearest, far] : [far, nearest]
  const pairs = indices.map((index, i) => {
    const plan = plans[index]!
    return { name: 'AB'[i]!, withIt: { yard, plan }, withoutIt: { yard, plan: withoutAir(plan) } }
  })
  const clips = mixedClips(pairs, truth === 'A' ? 0 : 1, order.levelDb)
  return { order, truth, clips, gauge: null, machine: machineOnTwo(clips, truth) }
}

function whatQuestion(order: QuestionOrder, random: Random): Question {
  const truth = random.pick(SOUND_KINDS)
  const clips = mixedClips([soundPair(practiceYard(order.seed), truth, random)], 0, order.levelDb)
  const isBubbling = truth === 'bubbling' ? 'bubbling' : 'something else'
  const machine = machineOnSound(clips[0]!.evidence, ['bubbling', 'something else'], isBubbling)
  return { order, truth, clips, gauge: null, machine }
}

/** Seven neighbouring points with the leak somewhere within them. */
function placeQuestion(order: QuestionOrder, random: Random): Question {
  const { yard, plans, nearest, leakM, spacingM } = practiceYard(order.seed)
  const first = Math.min(Math.max(0, nearest - random.integer(1, PLACE_POINTS - 2)), plans.length - PLACE_POINTS)
  const shown = plans.slice(first, first + PLACE_POINTS)
  const pairs = shown.map((plan, i) => ({
    name: String(i + 1),
    withIt: { yard, plan },
    withoutIt: { yard, plan: withoutAir(plan) },
  }))
  const clips = mixedClips(pairs, nearest - first, order.levelDb)
  const asPoints = (alongM: number) => 1 + (alongM - shown[0]!.row.alongM) / spacingM
  const truth = Math.min(PLACE_POINTS, Math.max(1, asPoints(leakM))).toFixed(2)
  const soundings = clips.map(({ evidence }, i) => ({ row: shown[i]!.row, evidence, problems: [] }))
  const machine = machineOnPlace({ line: yard.told, soundings }, asPoints, truth)
  return { order, truth, clips, gauge: null, machine }
}
