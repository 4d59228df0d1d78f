import { type Complaint, MOST_COMPLAINT, NO_COMPLAINT, RULED_OUT, WATER_PASSES } from '../../../../shared/job/complaint'
import type { JobLine } from '../../../../shared/job/job'
import { CHOICE_WORDS } from '../../../../shared/report/choiceWords'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Choice } from '../../look/widgets/Choice'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Switch } from '../../look/widgets/Switch'
import { TextField } from '../../look/widgets/TextField'
import { changeComplaint } from '../../store/actions/changeComplaint'

/** What was complained of, what was ruled out, how the line was shut off, and whether water passes at all. */
export function ComplaintPart({ line, disabled }: { readonly line: JobLine; readonly disabled: boolean }) {
  const { say } = useSay()
  const { store } = useApp()
  const complaint = line.complaint ?? NO_COMPLAINT
  const put = (change: Partial<Complaint>) => store.dispatch(changeComplaint, { lineId: line.id, change })
  const text = { mostLength: MOST_COMPLAINT, disabled, onDone: store.closeStep }
  return (
    <section className="panel" aria-label={say('heading_complaint')}>
      <Disclosure summary={say('heading_complaint')}>
        <div className="stack">
          <TextField
            {...text}
            label={say('label_complaint_said')}
            value={complaint.said}
            tall
            onChange={(said) => put({ said })}
          />
          <fieldset className="pressure-checks" disabled={disabled}>
            <legend>{say('label_ruled_out')}</legend>
            {RULED_OUT.map((each) => (
              <Switch
                key={each}
                words={say(CHOICE_WORDS.ruledOut[each])}
                on={complaint.ruledOut.includes(each)}
                onChange={(on) => put({ ruledOut: toggled(complaint.ruledOut, each, on) })}
              />
            ))}
          </fieldset>
          <TextField
            {...text}
            label={say('label_isolation')}
            value={complaint.isolation}
            tall
            onChange={(isolation) => put({ isolation })}
          />
          <Choice
            label={say('label_water_passes')}
            value={complaint.waterPasses ?? 'unsaid'}
            options={[
              ...WATER_PASSES.map((value) => ({ value, words: say(CHOICE_WORDS.waterPasses[value]) })),
              { value: 'unsaid' as const, words: say('label_passes_unsaid') },
            ]}
            disabled={disabled}
            onChange={(value) => put({ waterPasses: value === 'unsaid' ? null : value })}
          />
          {(complaint.waterPasses === 'poorly' || complaint.waterPasses === 'not at all') && (
            <p>{say('complaint_blocked')}</p>
          )}
        </div>
      </Disclosure>
    </section>
  )
}

function toggled<Word>(words: readonly Word[], word: Word, isThere: boolean): Word[] {
  const others = words.filter((each) => each !== word)
  return isThere ? [...others, word] : others
}
