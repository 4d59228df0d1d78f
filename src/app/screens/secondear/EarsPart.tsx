import { useMemo, useState } from 'react'
import type { Opinion } from '../../../../shared/job/opinions'
import { lineRange } from '../../../../shared/line/lineRange'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { type JointPlaces, jointPlaces, type MachinePlace } from '../../../../shared/opinion/jointPlaces'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import { answerOf } from '../../store/selectors/answerOf'
import { EarEntry } from './EarEntry'
import { EarsSketch } from './EarsSketch'
import type { EarsProps } from './earsProps'
import { useEars } from './useEars'

const NO_OPINIONS: readonly Opinion[] = []

/** All opinions on a line and the machine's answer, on one sketch and side by side. */
export function EarsPart({ job, line }: EarsProps) {
  const { say } = useSay()
  const kept = useAppState((state) => answerOf(state, line)?.answer ?? null)
  const answer = line.keptAnswer?.answer ?? kept
  const all = job.opinions ?? NO_OPINIONS
  const opinions = useMemo(
    () => all.filter(({ lineId }) => lineId === line.id).sort((a, b) => a.timeS - b.timeS),
    [all, line.id],
  )
  const ears = useEars(opinions)
  const { signed } = ears
  const [chosenPoint, choosePoint] = useState<number | null>(null)
  const points = useMemo(() => line.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row)), [line.sweeps])
  const joint = useMemo(() => {
    const range = lineRange(
      line.line,
      points.map(({ alongM }) => alongM),
    )
    // What is not as its device signed it says nothing of whoever that device belongs to.
    const counted = opinions.filter(({ id }) => signed[id] !== 'changed')
    return jointPlaces(counted, machineOf(answer), points, range === null ? [0, 1] : [range.fromM, range.toM])
  }, [opinions, signed, answer, points, line.line])
  const named = joint.ears.map(({ letter, alongM, windowM, opinion }) => ({
    letter,
    alongM,
    windowM,
    isMachine: opinion === null,
  }))
  return (
    <Panel heading={say('heading_ears')}>
      {opinions.length === 0 && <p>{say('ears_none')}</p>}
      <EarsSketch
        line={line}
        named={named}
        pooled={joint.ears.length > 1 ? joint.pooled : null}
        chosenPoint={chosenPoint}
        onChoose={(point) => choosePoint(point === chosenPoint ? null : point)}
      />
      <ul className="ears-list">
        {opinions.map((opinion) => (
          <EarEntry
            key={opinion.id}
            opinion={opinion}
            letter={joint.ears.find((ear) => ear.opinion === opinion)?.letter ?? null}
            line={line}
            ears={ears}
          />
        ))}
        <MachineEntry joint={joint} answer={answer} />
      </ul>
      <AgreementWords joint={joint} />
    </Panel>
  )
}

function machineOf(answer: LocateAnswer | null): MachinePlace | null {
  const [best] = answer?.sources ?? []
  if (answer === null || best === undefined) return null
  const { alongM, windowM, windowProbability, probability } = best
  return { alongM, windowM, confidence: windowProbability * probability, density: answer.density }
}

function MachineEntry({ joint, answer }: { readonly joint: JointPlaces; readonly answer: LocateAnswer | null }) {
  const { say } = useSay()
  const machine = joint.ears.find(({ opinion }) => opinion === null)
  if (answer === null) return <li className="ears-entry soft">{say('ears_machine_not_yet')}</li>
  return (
    <li className="ears-entry">
      <h3>
        {machine !== undefined && <span className="ears-letter">{machine.letter}</span>} {say('label_machine')}
      </h3>
      <p>
        {machine === undefined
          ? say('ears_machine_nothing')
          : say('ears_place', {
              along_m: machine.alongM,
              from_m: machine.windowM[0],
              to_m: machine.windowM[1],
              probability: machine.confidence,
            })}
      </p>
    </li>
  )
}

function AgreementWords({ joint: { ears, agreement, pooled } }: { readonly joint: JointPlaces }) {
  const { say } = useSay()
  const { spreadM, samePoint, pairs, sharedWindowM } = agreement
  if (spreadM === null) return null
  return (
    <div className="stack-small">
      <h3>{say('heading_agreement')}</h3>
      <p>{say('ears_agreement', { count: ears.length, spread_m: spreadM, same: samePoint, pairs })}</p>
      <p>
        {sharedWindowM === null
          ? say('ears_no_shared')
          : say('ears_shared', { from_m: sharedWindowM[0], to_m: sharedWindowM[1] })}
      </p>
      {pooled !== null && <p className="soft">{say('ears_pooled_how')}</p>}
    </div>
  )
}
