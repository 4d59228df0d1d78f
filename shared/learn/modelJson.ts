import type { DetectorModel } from './model'
import { MODEL_VERSION } from './model'

/** The text of a model file; `readModel` gives the same model back. */
export function modelJson(model: DetectorModel): string {
  const { features, scaling, odds, trees, calibration, card, evaluations } = model
  const file = {
    format: 'yardhark detector',
    version: MODEL_VERSION,
    card,
    threshold: model.threshold,
    usual_distance: model.usualDistance,
    penalty: model.penalty,
    intercept: odds.intercept,
    calibration,
    features: features.map((id, i) => ({ id, mean: scaling.mean[i], sd: scaling.sd[i], weight: odds.weights[i] })),
    trees,
    evaluations,
    heard: model.heard,
  }
  return `${JSON.stringify(file, null, 2)}\n`
}
