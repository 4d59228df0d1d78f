import { useState } from 'react'
import type { Joint } from '../../../../shared/job/mend'
import { ADHESIVES, type CureStage, cureStage, USUAL_CURE } from '../../../../shared/pressure/cureTimes'
import { CHOICE_WORDS } from '../../../../shared/report/choiceWords'
import { useApp } from '../../frame/useApp'
import { useNow } from '../../frame/useNow'
import { type Say, useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Choice } from '../../look/widgets/Choice'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import type { MendPartProps } from './mendPart'

/** The joint and when to look at it. The time stands in the job, so a closed app loses nothing. */
export function JointPart({ line, mend, disabled, onChange }: MendPartProps) {
  const { say } = useSay()
  const { nowS } = useApp()
  const { joint } = mend
  const put = (change: Partial<Joint>, typing?: string) => onChange({ joint: { ...joint, ...change } }, typing)
  const isMade = joint.startS !== null
  return (
    <Panel heading={say('heading_joint')}>
      <Choice
        label={say('label_adhesive')}
        value={joint.adhesive}
        options={ADHESIVES.map((value) => ({ value, words: say(CHOICE_WORDS.adhesive[value]) }))}
        disabled={disabled || isMade}
        onChange={(adhesive) => put({ adhesive, times: null })}
      />
      <p className="soft">{say(USUAL_CURE[joint.adhesive] === null ? 'joint_table' : 'joint_usual')}</p>
      <TimesFields key={`${line.id} ${joint.adhesive}`} joint={joint} disabled={disabled || isMade} onPut={put} />
      <p>{say('joint_dab')}</p>
      {joint.startS !== null && <Stage joint={joint} startS={joint.startS} />}
      {isMade ? (
        <Button disabled={disabled} onClick={() => put({ startS: null })}>
          {say('do_stop_joint')}
        </Button>
      ) : (
        <Button
          kind="decision"
          wide
          disabled={disabled || (joint.times ?? USUAL_CURE[joint.adhesive]) === null}
          onClick={() => put({ startS: nowS() })}
        >
          {say('do_start_joint')}
        </Button>
      )}
    </Panel>
  )
}

interface TimesFieldsProps {
  readonly joint: Joint
  readonly disabled: boolean
  readonly onPut: (change: Partial<Joint>, typing?: string) => void
}

/** The maker's table, where there is no usual time or the maker says otherwise. */
function TimesFields({ joint, disabled, onPut }: TimesFieldsProps) {
  const { say } = useSay()
  const { store } = useApp()
  const { times } = joint
  const [typed, setTyped] = useState<readonly [number | null, number | null]>(times?.pressureMin ?? [null, null])
  const field = { unit: 'min', least: 0, most: 100_000, optional: true, disabled, onDone: store.closeStep }
  const putPressure = (next: readonly [number | null, number | null]) => {
    setTyped(next)
    const [from, to] = next
    const isWhole = from !== null && to !== null && from <= to
    onPut({ times: isWhole ? { workMin: times?.workMin ?? null, pressureMin: [from, to] } : null }, 'pressure')
  }
  const isTurned = typed[0] !== null && typed[1] !== null && typed[0] > typed[1]
  return (
    <>
      <div className="mend-pair">
        <NumberField
          {...field}
          label={say('label_joint_from')}
          value={typed[0]}
          onChange={(from) => putPressure([from, typed[1]])}
          onWrong={() => putPressure([null, typed[1]])}
        />
        <NumberField
          {...field}
          label={say('label_joint_to')}
          value={typed[1]}
          onChange={(to) => putPressure([typed[0], to])}
          onWrong={() => putPressure([typed[0], null])}
        />
        {times !== null && (
          <NumberField
            {...field}
            label={say('label_joint_work')}
            value={times.workMin?.[1] ?? null}
            onChange={(work) => onPut({ times: { ...times, workMin: work === null ? null : [0, work] } }, 'work')}
          />
        )}
        <NumberField
          {...field}
          unit=""
          least={-60}
          most={100}
          label={say('label_joint_temperature')}
          value={joint.temperatureC}
          onChange={(temperatureC) => onPut({ temperatureC }, 'temperature')}
        />
      </div>
      {isTurned && <p className="field-wrong">{say('joint_turned')}</p>}
    </>
  )
}

function Stage({ joint, startS }: { readonly joint: Joint; readonly startS: number }) {
  const { say } = useSay()
  const now = useNow(true)
  if (now < startS) return <p className="mend-stage">{say('joint_clock_back')}</p>
  const { adhesive, times, temperatureC } = joint
  const stage = cureStage({ adhesive, times, temperatureC, startS, nowS: now })
  return (
    <div aria-live="off">
      <p className="mend-stage">{stageText(say, stage)}</p>
      <p>
        {say('joint_made_ago', { ago_min: (now - startS) / 60 })} {stage.isCold && say('joint_cold')}
      </p>
    </div>
  )
}

function stageText(say: Say, { stage, leftS }: CureStage): string {
  const left_min = (leftS ?? 0) / 60
  if (stage === 'working') return say('joint_working', { left_min })
  if (stage === 'leave alone') return say('joint_leave', { left_min })
  if (stage === 'may be ready: look') return say('joint_look', { left_min })
  return stage === 'times missing' ? say('joint_no_times') : say('joint_look_dab')
}
