import { useCallback, useMemo, useState } from 'react'
import type { JobLine } from '../../../../../shared/job/job'
import type { SketchPlace } from '../../../../../shared/line/line'
import { dragStepM } from '../../../../../shared/sketch/dragStepM'
import { lineSketch } from '../../../../../shared/sketch/lineSketch'
import { pointsOnLine } from '../../../../../shared/sketch/pointsOnLine'
import { useApp } from '../../../frame/useApp'
import { useSay } from '../../../frame/useSay'
import { Choice } from '../../../look/widgets/Choice'
import { Panel } from '../../../look/widgets/Panel'
import { Pad } from '../../../sketch/pad/Pad'
import { usePhotoUrl } from '../../../sketch/pad/usePhotoUrl'
import { MODES } from './modes'
import { type Grain, MODE_NAMES, type ModeContext, type ModeName, type PadChoices, type PadStep } from './padMode'
import { placesOf } from './placesOf'
import './SketchPanel.css'

export interface SketchPanelProps {
  readonly jobLine: JobLine
  readonly disabled: boolean
}

const FIRST_CHOICES: PadChoices = {
  cover: 'pavers',
  fromM: null,
  thing: 'fitting elbow',
  sign: 'wet patch',
  keepLengths: false,
  scale: [],
}

/** How far a finger is drawn to what it snaps to, px. */
const REACH_PX = 22

/** The line sketched by thumb: what a tap does is chosen below the sheet. */
export function SketchPanel({ jobLine, disabled }: SketchPanelProps) {
  const { store } = useApp()
  const { say, units } = useSay()
  const [name, setName] = useState<ModeName>('legs')
  const [chosenId, choose] = useState<string | null>(null)
  const [choices, setChoices] = useState(FIRST_CHOICES)
  const [draft, setDraft] = useState<JobLine | null>(null)
  const photo = (draft ?? jobLine).site?.photo ?? null
  const photoUrl = usePhotoUrl(photo)
  const contextOf = (of: JobLine): ModeContext => ({
    jobLine: of,
    store,
    say,
    units,
    disabled,
    chosenId,
    choose,
    choices,
    change: (changed) => setChoices((before) => ({ ...before, ...changed })),
  })
  const { mode: modeOf, Tools } = MODES[name]
  const shown = draft ?? jobLine
  const mode = modeOf(contextOf(jobLine))
  const shownMode = draft === null ? mode : modeOf(contextOf(draft))
  const chosen = shownMode.handles.find(({ id }) => id === chosenId)
  const draw = useDrawn(shown, mode.showsPoints, chosenId)
  const grainAt = (pxPerM: number): Grain => ({
    stepM: dragStepM(pxPerM, units.length),
    reachM: REACH_PX / pxPerM,
    pxPerM,
  })
  const preview = (step: PadStep | null) => {
    const job = step?.preview(store.get()).job
    setDraft(job?.lines.find(({ id }) => id === jobLine.id) ?? null)
  }
  return (
    <Panel heading={say('heading_sketch')}>
      <p className="sketchpad-hint">{draft === null ? mode.hint : (chosen?.label ?? mode.hint)}</p>
      <Pad
        draw={draw}
        places={placesOf(jobLine, name === 'photo')}
        handles={shownMode.handles}
        notes={shownMode.notes}
        photo={photo}
        photoUrl={photoUrl === 'missing' ? null : photoUrl}
        chosenId={chosenId}
        onTap={(place, pxPerM) => {
          if (disabled) return
          store.closeStep()
          mode.onTap(place, grainAt(pxPerM))
          store.closeStep()
        }}
        onChoose={choose}
        onPull={(id, to, pxPerM) => {
          choose(id)
          preview(mode.pulled(id, to, grainAt(pxPerM)))
        }}
        onDrop={(id: string, to: SketchPlace, pxPerM: number) => {
          setDraft(null)
          store.closeStep()
          mode.pulled(id, to, grainAt(pxPerM))?.commit(store)
          store.closeStep()
        }}
        onLetGo={() => setDraft(null)}
        onNudge={(id, right, up) => {
          if (disabled) return
          choose(id)
          mode.nudged(id, right, up)?.commit(store)
        }}
        onRemove={(id) => !disabled && mode.remove(id)}
        onLeave={store.closeStep}
      />
      {photoUrl === 'missing' && <p>{say('photo_missing')}</p>}
      <p role="status" className="unseen">
        {draft === null && chosen?.label}
      </p>
      <div className="sketchpad-modes">
        <Choice
          label={say('label_mode')}
          labelUnseen
          value={name}
          options={MODE_NAMES.map((each) => ({ value: each, words: say(MODES[each].words) }))}
          onChange={(next) => {
            setName(next)
            choose(null)
            setChoices((before) => ({ ...before, fromM: null, scale: [] }))
          }}
        />
      </div>
      <Tools of={contextOf(jobLine)} />
    </Panel>
  )
}

/** The picture under the handles. */
function useDrawn(jobLine: JobLine, showsPoints: boolean, chosenId: string | null) {
  const { line, signs, site } = jobLine
  const points = useMemo(
    () => (showsPoints ? pointsOnLine(jobLine).map((each) => ({ ...each, isHeard: true })) : []),
    [jobLine, showsPoints],
  )
  const chosenPoint = chosenId?.startsWith('peg-') ? Number(chosenId.slice(4)) : null
  return useCallback(
    (pxPerM: number) =>
      line.lengthM === null && points.length === 0
        ? []
        : lineSketch({
            line,
            points,
            answer: null,
            chosenPoint,
            isConfirmed: false,
            pxPerM,
            ...(signs && { signs }),
            ...(site && { ends: site }),
          }),
    [line, points, chosenPoint, signs, site],
  )
}
