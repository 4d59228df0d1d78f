import type { JobLine } from '../../../../shared/job/job'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import { OpenButtons } from '../../open/OpenButtons'

/** A line without a clip: what to do first. */
export function PlaceEmpty({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  return (
    <Panel heading={say('label_place')} headingUnseen>
      <p>{say('place_no_sweep')}</p>
      <OpenButtons target={{ kind: 'sweep', lineId: line.id }} isMain />
    </Panel>
  )
}
