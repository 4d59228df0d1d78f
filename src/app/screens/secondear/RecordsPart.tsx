import { useState } from 'react'
import type { Job } from '../../../../shared/job/job'
import { type Reviewers, reviewersOf } from '../../../../shared/opinion/reviewers'
import { formatNumber } from '../../../../shared/words/formatQuantity'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Panel } from '../../look/widgets/Panel'
import { Table } from '../../look/widgets/Table'
import { loadJob } from '../../storage/jobs'

/** How everybody's opinions did, over all jobs of this device, once the places were found. */
export function RecordsPart() {
  const { say } = useSay()
  return (
    <Panel heading={say('heading_records')} headingUnseen>
      <Disclosure summary={say('heading_records')}>{() => <Records />}</Disclosure>
    </Panel>
  )
}

function Records() {
  const { say } = useSay()
  const { store, database, saver } = useApp()
  const [found, setFound] = useState<Reviewers | null>(null)
  const work = async () => {
    await saver.flush()
    const jobs: Job[] = []
    for (const { id } of store.get().session.jobs ?? []) {
      const job = await loadJob(database, id).catch(() => null) // one that cannot be read says so when it is opened
      if (job?.opinions !== undefined) jobs.push(job)
    }
    setFound(reviewersOf(jobs))
  }
  if (found === null) {
    return (
      <>
        <p>{say('records_how')}</p>
        <Button onClick={() => void work()}>{say('do_work_records')}</Button>
      </>
    )
  }
  if (found.reviewers.length === 0) return <p>{say('records_none')}</p>
  return (
    <>
      <RecordTable found={found} />
      <PairTable found={found} />
      <p className="soft">{say('records_what')}</p>
    </>
  )
}

function RecordTable({ found }: { readonly found: Reviewers }) {
  const { say } = useSay()
  const none = say('label_none')
  return (
    <Table
      caption={say('heading_own_records')}
      columns={[
        { heading: say('label_reviewer') },
        { heading: say('label_opinions'), align: 'number' },
        { heading: say('label_found_since'), align: 'number' },
        { heading: say('label_middle_error'), align: 'number' },
        { heading: say('label_windows_held'), align: 'number' },
        { heading: say('label_brier'), align: 'number' },
      ]}
      rows={found.reviewers.map(({ key, name, opinions, record }) => ({
        key,
        cells: [
          <bdi key="name">{name === '' ? say('label_nameless') : name}</bdi>,
          String(opinions),
          String(record.placed),
          record.medianErrorM === null ? none : say('label_length', { m: record.medianErrorM }),
          record.placed === 0
            ? none
            : say('label_held_of', {
                held: record.held,
                count: record.placed,
                promised: formatNumber(record.promised, 1),
              }),
          record.brier === null ? none : formatNumber(record.brier, 2),
        ],
      }))}
    />
  )
}

function PairTable({ found: { reviewers, pairs } }: { readonly found: Reviewers }) {
  const { say } = useSay()
  const nameOf = (key: string | null) => {
    if (key === null) return say('label_machine')
    const name = reviewers.find((each) => each.key === key)?.name ?? ''
    return name === '' ? say('label_nameless') : name
  }
  if (pairs.length === 0) return null
  return (
    <Table
      caption={say('heading_pairs')}
      columns={[
        { heading: say('label_pair') },
        { heading: say('label_lines_both'), align: 'number' },
        { heading: say('label_kappa'), align: 'number' },
      ]}
      rows={pairs.map(({ first, second, lines, kappa }) => ({
        key: JSON.stringify([first, second]),
        cells: [
          say('label_pair_of', { first: nameOf(first), second: nameOf(second) }),
          String(lines),
          kappa === null ? say('label_none') : formatNumber(kappa, 2),
        ],
      }))}
    />
  )
}
