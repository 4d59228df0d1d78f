import { useMemo, useRef, useState } from 'react'
import type { Job } from '../../../../shared/job/job'
import { opinionFile } from '../../../../shared/opinion/opinionFile'
import type { PackedJob } from '../../../worker/protocol'
import { isAborted } from '../../analysis/analyst'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { packJob } from '../../jobfile/packJob'
import { Button } from '../../look/widgets/Button'
import { Notice } from '../../look/widgets/Notice'
import { Panel } from '../../look/widgets/Panel'
import { Progress } from '../../look/widgets/Progress'
import { Switch } from '../../look/widgets/Switch'
import { HandOver } from './HandOver'

interface SharePartProps {
  readonly job: Job
}

/** The job as a file for somebody else's ear: which points, with or without the customer, and how large. */
export function SharePart({ job }: SharePartProps) {
  const { say } = useSay()
  const points = useMemo(() => pointsOf(job), [job])
  const [some, setSome] = useState<ReadonlySet<number> | null>(null)
  const [withoutCustomer, setWithoutCustomer] = useState(false)
  const [asFlac, setAsFlac] = useState(false)
  const packing = usePacking(job)
  const choice = { points: some, withoutCustomer, asFlac }
  const toggle = (point: number) => {
    packing.forget()
    const chosen = some ?? new Set(points)
    setSome(new Set(points.filter((each) => (each === point ? !chosen.has(each) : chosen.has(each)))))
  }
  return (
    <Panel heading={say('heading_share')}>
      <p>{say('share_what')}</p>
      <Switch
        words={say('label_without_customer')}
        on={withoutCustomer}
        hint={say('share_without_customer')}
        onChange={(on) => {
          packing.forget()
          setWithoutCustomer(on)
        }}
      />
      <Switch
        words={say('label_as_flac')}
        on={asFlac}
        hint={say('share_as_flac')}
        onChange={(on) => {
          packing.forget()
          setAsFlac(on)
        }}
      />
      {points.length > 1 && (
        <Switch
          words={say('label_some_points')}
          on={some !== null}
          onChange={(on) => {
            packing.forget()
            setSome(on ? new Set(points) : null)
          }}
        />
      )}
      {some !== null && (
        <fieldset className="share-points">
          <legend className="unseen">{say('label_some_points')}</legend>
          {points.map((point) => (
            <label key={point} className="share-point">
              <input type="checkbox" className="switch-box" checked={some.has(point)} onChange={() => toggle(point)} />
              <span>{say('label_point', { point })}</span>
            </label>
          ))}
        </fieldset>
      )}
      {packing.trouble !== null && (
        <Notice severity="wrong">
          <p>{say('share_failed', { why: packing.trouble })}</p>
        </Notice>
      )}
      {packing.progress !== null && (
        <Progress words={say('share_packing')} {...packing.progress} onCancel={packing.cancel} />
      )}
      {packing.progress === null && packing.packed === null && (
        <Button disabled={some?.size === 0} onClick={() => packing.start(choice)}>
          {say('do_pack')}
        </Button>
      )}
      {packing.packed !== null && (
        <>
          <p>{say('share_size', { name: `${packing.packed.name}.zip`, size_mb: packing.packed.zip.size / 1e6 })}</p>
          {packing.packed.problems.length > 0 && <p>{say('share_lost', { count: packing.packed.problems.length })}</p>}
          <HandOver name={`${packing.packed.name}.zip`} content={packing.packed.zip} mediaType="application/zip" />
        </>
      )}
      <SendOpinions job={job} />
    </Panel>
  )
}

/** What came of listening, as a small file of its own. */
function SendOpinions({ job }: SharePartProps) {
  const { say } = useSay()
  const { opinions = [] } = job
  const content = useMemo(() => new Blob([opinionFile(job, job.opinions ?? [])], { type: 'application/json' }), [job])
  if (opinions.length === 0) return null
  return (
    <section className="stack-small">
      <h3>{say('heading_send_opinions')}</h3>
      <p>{say('share_opinions_what', { count: opinions.length })}</p>
      <HandOver name={`opinions-${job.id}.json`} content={content} mediaType="application/json" isOpinions />
    </section>
  )
}

function pointsOf({ lines }: Job): number[] {
  const points = lines.flatMap(({ sweeps }) => sweeps.flatMap(({ clips }) => clips.map(({ row }) => row.point)))
  return [...new Set(points)].sort((a, b) => a - b)
}

function usePacking(job: Job) {
  const { store, analyst, database } = useApp()
  const running = useRef<AbortController | null>(null)
  const [packed, setPacked] = useState<{ readonly of: Job; readonly file: PackedJob } | null>(null)
  const [progress, setProgress] = useState<{ readonly done: number; readonly total: number } | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const cancel = () => {
    running.current?.abort()
    setProgress(null)
  }
  const start = async (choice: Parameters<typeof packJob>[1]) => {
    const controller = new AbortController()
    running.current = controller
    setTrouble(null)
    setProgress({ done: 0, total: 0 })
    try {
      const file = await packJob(job, choice, store.get().session.heard, {
        analyst,
        database,
        signal: controller.signal,
        onDone: (done, total) => setProgress({ done, total }),
      })
      setPacked({ of: job, file })
    } catch (error) {
      if (!isAborted(error)) setTrouble(error instanceof Error ? error.message : String(error))
    } finally {
      if (!controller.signal.aborted) setProgress(null)
    }
  }
  return {
    /** Of the job as it is now; what was packed before a change is of no use. */
    packed: packed?.of === job ? packed.file : null,
    progress,
    trouble,
    start: (choice: Parameters<typeof packJob>[1]) => void start(choice),
    cancel,
    forget: () => {
      cancel()
      setPacked(null)
    },
  }
}
