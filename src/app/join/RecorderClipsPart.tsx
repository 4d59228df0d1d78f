import { useSay } from '../frame/useSay'
import { Panel } from '../look/widgets/Panel'
import { OpenButtons } from '../open/OpenButtons'

/** Beside recording: what another recorder recorded. */
export function RecorderClipsPart({ lineId }: { readonly lineId: string }) {
  const { say } = useSay()
  return (
    <Panel heading={say('heading_recorder_clips')}>
      <p>{say('join_how')}</p>
      <OpenButtons target={{ kind: 'sweep', lineId }} />
    </Panel>
  )
}
