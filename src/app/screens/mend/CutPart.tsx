import { useState } from 'react'
import type { MendPart } from '../../../../shared/job/mend'
import { type PartProof, partProof } from '../../../../shared/job/partProof'
import { type LeakDensity, partsToTest } from '../../../../shared/job/partsToTest'
import { freshPressureTest } from '../../../../shared/job/pressureTests'
import { CHOICE_WORDS } from '../../../../shared/report/choiceWords'
import { useApp, useAppState } from '../../frame/useApp'
import { type Say, useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { newId } from '../../newId'
import { goTo } from '../../route'
import { addPressureTest } from '../../store/actions/addPressureTest'
import type { MendPartProps } from './mendPart'

interface CutPartProps extends MendPartProps {
  readonly density: LeakDensity | null
}

/** Where the line was cut, and what is proved of each part. */
export function CutPart({ line, mend, disabled, onChange, density }: CutPartProps) {
  const { say } = useSay()
  const [cutAtM, setCutAtM] = useState<number | null>(null)
  const { lengthM } = line.line
  const tests = line.pressureTests ?? []
  const [first] = partsToTest(mend.parts, tests, density)
  const proofs = mend.parts.map((part) => partProof(part, tests))
  if (lengthM === null) {
    return (
      <Panel heading={say('heading_cut')}>
        <p>{say('cut_needs_length')}</p>
      </Panel>
    )
  }
  const parts = mend.parts.length > 0 ? mend.parts : [{ id: '', name: '', fromM: 0, toM: lengthM, testIds: [] }]
  const canCut = cutAtM !== null && parts.some(({ fromM, toM }) => cutAtM > fromM && cutAtM < toM)
  const cut = () => {
    if (!canCut) return
    onChange({ cutAtM: mend.cutAtM ?? cutAtM, parts: cutParts(parts, cutAtM, say) })
    setCutAtM(null)
  }
  return (
    <Panel heading={say('heading_cut')}>
      <p className="soft">{say('cut_why')}</p>
      {mend.parts.length > 0 && (
        <ul className="mend-parts">
          {mend.parts.map((part, i) => (
            <PartOne
              key={part.id}
              line={line}
              mend={mend}
              disabled={disabled}
              onChange={onChange}
              part={part}
              proof={proofs[i]!}
              isFirst={part.id === first}
            />
          ))}
        </ul>
      )}
      <ProofSum proofs={proofs} jointS={mend.joint.startS} />
      <NumberField
        key={mend.parts.length}
        label={say('label_cut_at')}
        value={cutAtM}
        unit="m"
        least={0}
        most={lengthM}
        optional
        disabled={disabled}
        onChange={setCutAtM}
        onWrong={() => setCutAtM(null)}
      />
      <Button disabled={disabled || !canCut} onClick={cut}>
        {say(mend.parts.length === 0 ? 'do_cut' : 'do_cut_part')}
      </Button>
    </Panel>
  )
}

/** The part that is cut becomes two, untested; the others keep their proofs. */
function cutParts(parts: readonly MendPart[], atM: number, say: Say): MendPart[] {
  const made = parts.flatMap((part) =>
    atM > part.fromM && atM < part.toM
      ? [
          { ...part, id: newId(), toM: atM, testIds: [] },
          { ...part, id: newId(), fromM: atM, testIds: [] },
        ]
      : [part],
  )
  const nameOf = (i: number) => {
    if (i === 0) return say('label_part_start')
    return i === made.length - 1 ? say('label_part_end') : say('label_part_middle', { number: i + 1 })
  }
  return made.map((part, i) => ({ ...part, name: nameOf(i) }))
}

const PROOF_WORDS = {
  'not tested': 'label_proof_none',
  'test open': 'label_proof_open',
  ...CHOICE_WORDS.holdVerdict,
} as const satisfies Record<PartProof['state'], string>

interface PartOneProps extends MendPartProps {
  readonly part: MendPart
  readonly proof: PartProof
  readonly isFirst: boolean
}

function PartOne({ line, mend, disabled, onChange, part, proof, isFirst }: PartOneProps) {
  const { say } = useSay()
  const { store, nowS } = useApp()
  const jobId = useAppState((state) => state.job?.id ?? null)
  const unit = useAppState((state) => state.device.units.pressure)
  const toPressure = () => goTo({ screen: 'pressure', jobId, lineId: line.id })
  const test = () => {
    const last = line.pressureTests?.at(-1)
    const gauge = last && { unit: last.unit, resolution: last.resolution, rules: last.rules }
    const told = { id: newId(), createdS: nowS(), unit, ...gauge, name: part.name, lengthM: part.toM - part.fromM }
    const fresh = freshPressureTest(told)
    store.dispatch(addPressureTest, { lineId: line.id, test: fresh })
    const own = { ...part, testIds: [...part.testIds, fresh.id] }
    onChange({ parts: mend.parts.map((each) => (each.id === part.id ? own : each)) })
    toPressure()
  }
  const when = 'test' in proof && mend.joint.startS !== null ? proof.test.createdS >= mend.joint.startS : null
  const words = [say(PROOF_WORDS[proof.state])]
  if (when !== null) words.push(say(when ? 'label_proof_after' : 'label_proof_before'))
  return (
    <li className="mend-part" data-state={proof.state}>
      <h3>
        {part.name}: {say('label_part_range', { from_m: part.fromM, to_m: part.toM })}
      </h3>
      <p className="mend-proof">{words.join(', ')}</p>
      {isFirst && proof.state !== 'test open' && <p className="soft">{say('part_first')}</p>}
      <div className="row">
        {proof.state === 'test open' ? (
          <Button onClick={toPressure}>{say('do_to_pressure')}</Button>
        ) : (
          <Button kind={isFirst ? 'main' : 'quiet'} disabled={disabled} onClick={test}>
            {say(proof.state === 'not tested' ? 'do_test_part' : 'do_test_again', { name: part.name })}
          </Button>
        )}
      </div>
    </li>
  )
}

/** What the proofs say together. */
function ProofSum({ proofs, jointS }: { readonly proofs: readonly PartProof[]; readonly jointS: number | null }) {
  const { say } = useSay()
  if (proofs.length === 0) return null
  const allHold = proofs.every(({ state }) => state === 'holds')
  if (jointS === null) return allHold ? <p>{say('parts_all_hold')}</p> : null
  const isAfter = (proof: PartProof) => 'test' in proof && proof.state === 'holds' && proof.test.createdS >= jointS
  return <p>{say(proofs.every(isAfter) ? 'parts_proved_after' : 'parts_prove_after')}</p>
}
