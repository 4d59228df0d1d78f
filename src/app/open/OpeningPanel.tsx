import { useState } from 'react'
import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { JoinPanel } from '../join/JoinPanel'
import { Button } from '../look/widgets/Button'
import { NumberField } from '../look/widgets/NumberField'
import { Panel } from '../look/widgets/Panel'
import { Progress } from '../look/widgets/Progress'
import type { Opening } from '../store/state'

/** How far opening is, or what it has to be told. Nothing while nothing is being opened. */
export function OpeningPanel() {
  const { say } = useSay()
  const { opener } = useApp()
  const opening = useAppState((state) => state.session.opening)
  if (opening === null) return <JoinPanel />
  if (opening.stage === 'asking') return <LayoutQuestion asking={opening} />
  const { stage, name, done, total } = opening
  return (
    <Panel heading={name} headingUnseen>
      <Progress words={say(WORDS_OF[stage], { name })} done={done} total={total} onCancel={() => opener.cancel()} />
    </Panel>
  )
}

const WORDS_OF = {
  fetching: 'opening_fetching',
  unpacking: 'opening_unpacking',
  reading: 'opening_reading',
  keeping: 'opening_keeping',
} as const

const MOST_NAMES = 6

function LayoutQuestion({ asking }: { readonly asking: Extract<Opening, { stage: 'asking' }> }) {
  const { say } = useSay()
  const { opener } = useApp()
  const [spacingM, setSpacingM] = useState<number | null>(null)
  const [startM, setStartM] = useState<number | null>(0)
  const { name, clipCount: clips, points, leftOut } = asking
  const [first] = points
  const last = points.at(-1)
  if (first === undefined || last === undefined) return null
  const isTold = spacingM !== null && startM !== null
  return (
    <Panel heading={say('heading_layout')}>
      <p>{say('layout_found', { clips, name, first, last })}</p>
      {leftOut.length > 0 && <p>{say('layout_left_out', { files: shortList(leftOut) })}</p>}
      <NumberField
        label={say('label_spacing')}
        value={spacingM}
        unit="m"
        least={0.01}
        most={1000}
        hint={say('layout_gap')}
        onChange={setSpacingM}
        onWrong={() => setSpacingM(null)}
      />
      <NumberField
        label={say('label_start', { point: first })}
        value={startM}
        unit="m"
        least={-10_000}
        most={10_000}
        onChange={setStartM}
        onWrong={() => setStartM(null)}
      />
      <p>
        {isTold
          ? say('layout_comes_out', { first, last, from_m: startM, to_m: startM + (last - first) * spacingM })
          : say('layout_first')}
      </p>
      <div className="row">
        <Button kind="main" disabled={!isTold} onClick={() => isTold && void opener.layout({ startM, spacingM })}>
          {say('do_use_layout')}
        </Button>
        <Button onClick={() => opener.cancel()}>{say('do_cancel')}</Button>
      </div>
    </Panel>
  )
}

function shortList(names: readonly string[]): string {
  return names.length <= MOST_NAMES ? names.join(', ') : `${names.slice(0, MOST_NAMES).join(', ')}, ...`
}
