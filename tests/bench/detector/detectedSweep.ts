import { readFileSync } from 'node:fs'
import { strongestChannel } from '../../../shared/audio/strongestChannel'
import { clipEvidence } from '../../../shared/evidence/clipEvidence'
import { detected } from '../../../shared/learn/detected'
import { detectorValues } from '../../../shared/learn/detectorFeatures'
import type { DetectorModel } from '../../../shared/learn/model'
import { readModel } from '../../../shared/learn/readModel'
import { stretchAt } from '../../../shared/line/stretchAt'
import type { Sounding } from '../../../shared/locate/answer'
import { locate } from '../../../shared/locate/locate'
import { timbre } from '../../../shared/spectrum/timbre'
import { drawYard } from '../../../shared/synth/drawYard'
import { familyNamed } from '../../../shared/synth/families'
import { leakOverFloorDb } from '../../../shared/synth/leakOverFloor'
import { renderClip } from '../../../shared/synth/renderClip'
import type { ClipPlan, Yard } from '../../../shared/synth/yard'
import { HEARD_DB } from '../../../shared/synth/yardFiles'
import { serveOrders } from '../inProcesses'
import { type Judged, judgeAnswer } from '../place/judgeSweep'

/** A sweep to be judged with and without the model in a file. */
export interface DetectedOrder {
  readonly family: string
  readonly seed: string
  readonly modelPath: string
}

type Worth = Pick<Judged, 'leaks' | 'verdict' | 'error' | 'sources' | 'found'>

/** What the same sweep came to without the detector and with it. */
export interface DetectedSweep {
  readonly family: string
  readonly without: Worth
  readonly withDetector: Worth
  /** With one that never errs: it is told of each clip whether the leak is in it. No detector can add more. */
  readonly withTruth: Worth
}

const models = new Map<string, DetectorModel>()

function modelIn(path: string): DetectorModel {
  const model = models.get(path) ?? readModel(readFileSync(path, 'utf8'), path)
  models.set(path, model)
  return model
}

/** As sure as a detector may be of one clip, nepers. */
const SURE_NEPERS = 4

/** For a leak from where it is labelled one, against it below; nobody learns from what is between. */
function truthNepers(yard: Yard, plan: ClipPlan): number {
  return (leakOverFloorDb(yard, plan) ?? Number.NEGATIVE_INFINITY) >= HEARD_DB ? SURE_NEPERS : -SURE_NEPERS
}

/** Renders the clips of a yard, locates without a detector and with one. */
export function detectedSweep({ family, seed, modelPath }: DetectedOrder): DetectedSweep {
  const yard = drawYard(familyNamed(family)!, seed)
  const model = modelIn(modelPath)
  const heard: Sounding[] = yard.clips.map((plan) => {
    const clip = renderClip(yard, plan)
    const evidence = clipEvidence(clip)
    const isSpoilt = evidence.problems.some(({ severity }) => severity === 'spoilt')
    const sounding = { row: plan.row, evidence, problems: [] }
    if (plan.row.air === 'off' || isSpoilt) return sounding
    const values = detectorValues({
      evidence,
      timbre: timbre(clip.channels[strongestChannel(clip)]!, clip.sampleRateHz),
    })
    const cover = stretchAt(yard.told, plan.row.alongM)?.cover ?? ''
    return { ...sounding, detected: detected(model, values, { device: '', cover }) }
  })
  const worth = (soundings: readonly Sounding[]): Worth => {
    const { leaks, verdict, error, sources, found } = judgeAnswer(yard, locate({ line: yard.told, soundings }))
    return { leaks, verdict, error, sources, found }
  }
  const told = heard.map((each, i) =>
    each.detected ? { ...each, detected: { ...each.detected, nepers: truthNepers(yard, yard.clips[i]!) } } : each,
  )
  return {
    family,
    without: worth(heard.map((each) => ({ ...each, detected: null }))),
    withDetector: worth(heard),
    withTruth: worth(told),
  }
}

serveOrders(detectedSweep)
