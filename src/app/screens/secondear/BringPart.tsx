import { useRef } from 'react'
import type { Job } from '../../../../shared/job/job'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Icon } from '../../look/widgets/Icon'
import { Panel } from '../../look/widgets/Panel'

/** What somebody sent back joins the job; what the copies tell differently is listed. */
export function BringPart({ job }: { readonly job: Job }) {
  const { say } = useSay()
  const { opener } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const input = useRef<HTMLInputElement>(null)
  const { keptApart = [] } = job
  return (
    <Panel heading={say('heading_bring')}>
      <p>{say('bring_what')}</p>
      <Button icon={<Icon name="open" />} disabled={readOnly} onClick={() => input.current?.click()}>
        {say('do_bring')}
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        data-picker="back"
        accept=".json,.zip"
        onChange={({ target }) => {
          const picked = [...(target.files ?? [])]
          target.value = ''
          if (picked.length > 0) void opener.files(picked, { kind: 'job' })
        }}
      />
      {keptApart.length > 0 && (
        <Disclosure summary={say('heading_apart', { count: keptApart.length })}>
          {() => (
            <>
              <p>{say('apart_what')}</p>
              <ul className="stack-small ears-apart">
                {keptApart.map(({ place, value }) => (
                  <li key={`${place} ${JSON.stringify(value)}`}>
                    <code>{place}</code>: <bdi>{short(value)}</bdi>
                  </li>
                ))}
              </ul>
            </>
          )}
        </Disclosure>
      )}
    </Panel>
  )
}

const MOST_SHOWN = 200

function short(value: unknown): string {
  const text = JSON.stringify(value)
  return text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}...` : text
}
