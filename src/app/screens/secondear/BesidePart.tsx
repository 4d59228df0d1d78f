import { useEffect, useMemo, useState } from 'react'
import type { Job, JobLine } from '../../../../shared/job/job'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Panel } from '../../look/widgets/Panel'
import { SelectField } from '../../look/widgets/SelectField'
import { isJobBlind } from '../../review/reviews'
import { PointSounds } from '../../sounds/PointSounds'
import { panelClips } from '../../sounds/panelClips'
import { loadJob } from '../../storage/jobs'

/** Clips of two jobs beside each other: does this sound like that one did? */
export function BesidePart({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  return (
    <Panel heading={say('heading_beside')} headingUnseen>
      <Disclosure summary={say('heading_beside')}>{() => <Beside line={line} />}</Disclosure>
    </Panel>
  )
}

function Beside({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const { database } = useApp()
  const ownId = useAppState((state) => state.job?.id ?? null)
  const jobs = useAppState((state) => state.session.jobs)
  const others = (jobs ?? []).filter(({ id, pointCount }) => id !== ownId && pointCount > 0)
  const [jobId, setJobId] = useState('')
  const [job, setJob] = useState<Job | null>(null)
  const isHidden = useAppState((state) => jobId !== '' && isJobBlind(state, jobId))
  useEffect(() => {
    let isGone = false
    setJob(null)
    if (jobId !== '') {
      void loadJob(database, jobId)
        .catch(() => null) // one that cannot be read says so when it is opened
        .then((loaded) => !isGone && setJob(loaded))
    }
    return () => {
      isGone = true
    }
  }, [database, jobId])
  if (others.length === 0) return <p>{say('beside_none')}</p>
  return (
    <div className="stack">
      <SelectField
        label={say('label_other_job')}
        value={jobId}
        options={[
          { value: '', words: say('label_choose') },
          ...others.map(({ id, name }) => ({
            value: id,
            words: name === '' ? say('label_job_nameless', { id }) : name,
          })),
        ]}
        onChange={setJobId}
      />
      <div className="ears-beside">
        <PointOfLine lines={[line]} />
        {isHidden && <p>{say('beside_blind')}</p>}
        {job !== null && !isHidden && <PointOfLine key={job.id} lines={job.lines} />}
      </div>
    </div>
  )
}

/** One point of one line, chosen, to be looked at and heard. */
function PointOfLine({ lines }: { readonly lines: readonly JobLine[] }) {
  const { say } = useSay()
  const heard = useAppState((state) => state.session.heard)
  const points = useMemo(
    () =>
      lines.flatMap((line) => {
        const numbers = line.sweeps.flatMap(({ clips }) => clips.flatMap(({ row, sound }) => (sound ? row.point : [])))
        return [...new Set(numbers)]
          .sort((a, b) => a - b)
          .map((point) => ({ value: JSON.stringify([line.id, point]), line, point }))
      }),
    [lines],
  )
  const [chosen, choose] = useState(points[0]?.value ?? '')
  const here = points.find(({ value }) => value === chosen)
  const clips = useMemo(() => {
    if (here === undefined) return null
    const own = panelClips(here.line, heard, here.point).own.filter(({ sha256 }) => sha256 !== null)
    return {
      on: own.find(({ air }) => air === 'on') ?? null,
      off: own.find(({ air }) => air === 'off') ?? null,
      before: null,
      after: null,
    }
  }, [here, heard])
  if (here === undefined || clips === null) return null
  return (
    <div className="stack">
      <SelectField
        label={say('label_beside_point')}
        value={chosen}
        options={points.map(({ value, line, point }) => ({
          value,
          words: lines.length > 1 ? say('label_line_point', { name: line.name, point }) : say('label_point', { point }),
        }))}
        onChange={choose}
      />
      <PointSounds key={chosen} point={here.point} clips={clips} telling={null} />
    </div>
  )
}
