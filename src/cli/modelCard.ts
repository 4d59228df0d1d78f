import type { DetectorModel } from '../../shared/learn/model'
import { sentence } from '../../shared/words/sentence'
import { modelText } from './detectorText'

/** The card that is written beside a model, in Markdown. */
export function modelCard(model: DetectorModel): string {
  const { card } = model
  const heading = (key: 'heading_detector_data' | 'heading_detector_worth' | 'heading_detector_limits') =>
    `## ${sentence(key, {})}`
  const told = [...card.devices, ...card.covers].map((each) => `- ${plain(each)}`)
  return [
    `# ${plain(card.name)}`,
    sentence('detector_card_trained', { when: card.trainedAt, version: card.programVersion }),
    heading('heading_detector_data'),
    plain(card.data),
    ...(told.length === 0 ? [] : [told.join('\n')]),
    heading('heading_detector_worth'),
    `\`\`\`\n${modelText(model, 100)}\`\`\``,
    heading('heading_detector_limits'),
    card.limits.map((limit) => `- ${plain(limit)}`).join('\n'),
    '',
  ].join('\n\n')
}

/** Text of somebody's as text: nothing in it is markup. */
function plain(text: string): string {
  return text.replace(/\s+/g, ' ').replace(/[\\`*_{}[\]()#+!<>|]/g, '\\$&')
}
