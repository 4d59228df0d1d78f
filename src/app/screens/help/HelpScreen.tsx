import { CLIP_FEATURES } from '../../../../shared/evidence/features'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import './HelpScreen.css'

/** What the words mean: those of the answer, and one line for each number that a clip gives. */
export function HelpScreen() {
  const { say } = useSay()
  return (
    <div className="help">
      <Panel heading={say('heading_help_record')}>
        <ol className="help-steps">
          {RECORD_STEPS.map((step) => (
            <li key={step}>{say(step)}</li>
          ))}
        </ol>
      </Panel>
      <Panel heading={say('heading_help_ear')}>
        <ol className="help-steps">
          {EAR_STEPS.map((step) => (
            <li key={step}>{say(step)}</li>
          ))}
        </ol>
      </Panel>
      <Panel heading={say('heading_help_words')}>
        <dl className="help-list">
          {WORD_ENTRIES.map(([term, meaning]) => (
            <div key={term}>
              <dt>{say(term)}</dt>
              <dd>{say(meaning)}</dd>
            </div>
          ))}
        </dl>
      </Panel>
      <Panel heading={say('heading_help_features')}>
        <dl className="help-list">
          {CLIP_FEATURES.map(({ id, heading, unit, meaning }) => (
            <div key={id}>
              <dt>
                {heading}
                {unit !== '' && `, ${unit}`}
              </dt>
              <dd>{meaning}</dd>
            </div>
          ))}
        </dl>
      </Panel>
    </div>
  )
}

const RECORD_STEPS = [
  'help_record_points',
  'help_record_water',
  'help_record_air',
  'help_record_clip',
  'help_record_off',
  'help_record_phone',
  'help_record_free',
  'help_record_names',
  'help_record_line',
] as const

const EAR_STEPS = ['help_ear_share', 'help_ear_open', 'help_ear_blind', 'help_ear_back'] as const

/** Term and meaning, in the order they are met. */
const WORD_ENTRIES = [
  ['label_help_job', 'help_job'],
  ['label_help_line', 'help_line'],
  ['label_help_along', 'help_along'],
  ['label_help_leg', 'help_leg'],
  ['label_help_stretch', 'help_stretch'],
  ['label_help_inlet', 'help_inlet'],
  ['label_help_point', 'help_point'],
  ['label_help_clip', 'help_clip'],
  ['label_help_take', 'help_take'],
  ['label_help_sweep', 'help_sweep'],
  ['label_help_spectrum', 'help_spectrum'],
  ['label_help_spectrogram', 'help_spectrogram'],
  ['label_help_hertz', 'help_hertz'],
  ['label_help_decibel', 'help_decibel'],
  ['label_help_ring', 'help_ring'],
  ['label_help_floor', 'help_floor'],
  ['label_help_source', 'help_source'],
  ['label_help_probability', 'help_probability'],
  ['label_help_window', 'help_window'],
  ['label_help_located', 'help_located'],
  ['label_help_unsure', 'help_unsure'],
  ['label_help_none', 'help_none'],
  ['label_help_ear', 'help_ear'],
] as const
