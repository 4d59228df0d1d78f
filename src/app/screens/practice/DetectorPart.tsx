import { useRef, useState } from 'react'
import type { DetectorModel } from '../../../../shared/learn/model'
import type { Keyed } from '../../../../shared/words/sentence'
import { installDetector, removeDetector } from '../../detector/installDetector'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Icon } from '../../look/widgets/Icon'
import { Notice } from '../../look/widgets/Notice'
import { Panel } from '../../look/widgets/Panel'

/** Beside the page, made by a bench of this project. */
const STARTING = 'starting-detector.json'

/** What is asked beside levels and rings: installed, looked at, removed. */
export function DetectorPart() {
  const { say, sayKeyed } = useSay()
  const app = useApp()
  const detector = useAppState((state) => state.session.detector)
  const picker = useRef<HTMLInputElement>(null)
  const [wrong, setWrong] = useState<Keyed | null>(null)
  const install = async (file: Blob, name: string) => setWrong(await installDetector(app, file, name))
  const installStarting = async () => {
    try {
      const answer = await fetch(new URL(STARTING, document.baseURI))
      if (!answer.ok) throw new Error(answer.statusText)
      await install(await answer.blob(), STARTING)
    } catch {
      setWrong({ key: 'detector_to_come', values: {} })
    }
  }
  return (
    <Panel heading={say('heading_detector')}>
      <p>{say('detector_why')}</p>
      {wrong !== null && (
        <Notice severity="wrong">
          <p>{sayKeyed(wrong)}</p>
        </Notice>
      )}
      <p role="status">
        {detector === null ? say('detector_none') : say('detector_installed', { name: detector.card.name })}
      </p>
      {detector !== null && <Disclosure summary={say('heading_card')}>{() => <Card model={detector} />}</Disclosure>}
      <div className="row">
        <Button onClick={() => void installStarting()}>{say('do_install_starting')}</Button>
        <Button icon={<Icon name="open" />} onClick={() => picker.current?.click()}>
          {say('do_install_file')}
        </Button>
        <input
          ref={picker}
          type="file"
          hidden
          data-picker="detector"
          accept=".json"
          onChange={({ target }) => {
            const [file] = target.files ?? []
            if (file) void install(file, file.name)
            target.value = ''
          }}
        />
        {detector !== null && <Button onClick={() => void removeDetector(app)}>{say('do_remove_detector')}</Button>}
      </div>
    </Panel>
  )
}

function Card({ model: { card, evaluations } }: { readonly model: DetectorModel }) {
  const { say } = useSay()
  const [byJob] = evaluations
  return (
    <ul className="stack-small">
      <li>{card.data}</li>
      <li>{say('label_card_clips', { leaks: card.leaks, others: card.others, jobs: card.jobs })}</li>
      {byJob && (
        <li>
          {say('label_card_area', {
            area: byJob.area.area.toFixed(3),
            low: byJob.area.low.toFixed(3),
            high: byJob.area.high.toFixed(3),
          })}
        </li>
      )}
      {card.trainedAt !== '' && <li>{say('label_card_trained', { when: card.trainedAt.slice(0, 10) })}</li>}
      {card.devices.length > 0 && <li>{say('label_card_devices', { list: card.devices.join(', ') })}</li>}
      {card.covers.length > 0 && <li>{say('label_card_covers', { list: card.covers.join(', ') })}</li>}
      {card.limits.map((limit) => (
        <li key={limit}>{limit}</li>
      ))}
    </ul>
  )
}
