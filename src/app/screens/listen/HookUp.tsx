import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { DeviceField } from './DeviceField'
import { LivePart } from './LivePart'
import { RecorderNotices } from './RecorderNotices'
import { TapTestPart } from './TapTestPart'

/** How a ground microphone meets a phone, and the proof that the phone hears it. */
export function HookUp({ onDone }: { readonly onDone: () => void }) {
  const { say } = useSay()
  return (
    <div className="listen">
      <div className="listen-column">
        <h2>{say('heading_hook_up')}</h2>
        <p>{say('hook_up_why')}</p>
        <RecorderNotices />
        <LivePart>
          <DeviceField />
        </LivePart>
        <TapTestPart />
      </div>
      <div className="listen-column">
        <Panel heading={say('heading_plug')}>
          <ul className="stack-small listen-list">
            <li>{say('plug_headset')}</li>
            <li>{say('plug_power')}</li>
            <li>{say('plug_usb')}</li>
            <li>{say('plug_adapter')}</li>
            <li>{say('plug_bluetooth')}</li>
          </ul>
        </Panel>
        <Panel heading={say('heading_set_down')}>
          <ul className="stack-small listen-list">
            <li>{say('set_spike')}</li>
            <li>{say('set_plate')}</li>
            <li>{say('set_same')}</li>
          </ul>
          <p className="soft">{say('hook_up_practice')}</p>
        </Panel>
        <div className="page-action">
          <Button kind="main" wide onClick={onDone}>
            {say('do_hook_up_done')}
          </Button>
        </div>
      </div>
    </div>
  )
}
