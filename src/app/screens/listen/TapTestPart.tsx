import { useEffect, useState } from 'react'
import type { HeardBlock } from '../../../../shared/record/settling'
import { judgeTapTest, type TapTest } from '../../../../shared/record/tapTest'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Notice } from '../../look/widgets/Notice'
import { Panel } from '../../look/widgets/Panel'
import { useRecorder, useRecorderState } from './useRecorder'

/** Time for three slow taps, and between the two halves, s. Chosen. */
const STEPS_S = { microphone: 6, wait: 3, phone: 6 } as const

type Step = keyof typeof STEPS_S
const NEXT = { microphone: 'wait', wait: 'phone', phone: null } as const
const GUIDE = { microphone: 'tap_microphone', wait: 'tap_wait', phone: 'tap_phone' } as const

/** Taps on the ground microphone, then on the phone: which of them is heard? */
export function TapTestPart() {
  const { say } = useSay()
  const recorder = useRecorder()
  const isClosed = useRecorderState((state) => state.recording.phase === 'closed')
  const [run, setRun] = useState<number | null>(null)
  const [result, setResult] = useState<TapTest | null>(null)
  const start = async () => {
    setResult(null)
    await recorder.open()
    if (recorder.get().device !== null) setRun((run ?? 0) + 1)
  }
  const finish = (test: TapTest | null) => {
    setResult(test)
    setRun(null)
  }
  return (
    <Panel heading={say('heading_tap_test')}>
      <p>{say('tap_intro')}</p>
      {run !== null && !isClosed && <TapRun key={run} onDone={finish} />}
      {result !== null && <TapResult test={result} />}
      {(run === null || isClosed) && (
        <Button onClick={() => void start()}>{say(result === null ? 'do_tap_start' : 'do_tap_again')}</Button>
      )}
    </Panel>
  )
}

function TapRun({ onDone }: { readonly onDone: (test: TapTest) => void }) {
  const { say } = useSay()
  const recorder = useRecorder()
  const [shown, setShown] = useState<{ readonly step: Step; readonly leftS: number }>({
    step: 'microphone',
    leftS: STEPS_S.microphone,
  })
  useEffect(() => {
    const heard: Record<Step, HeardBlock[]> = { microphone: [], wait: [], phone: [] }
    let step: Step = 'microphone'
    let fromS: number | null = null
    return recorder.onBlock((block) => {
      fromS ??= block.atS
      heard[step].push(block)
      const leftS = STEPS_S[step] - (block.atS - fromS)
      if (leftS > 0) {
        setShown((before) => (Math.ceil(before.leftS) === Math.ceil(leftS) ? before : { step, leftS }))
        return
      }
      const next: Step | null = NEXT[step]
      if (next === null) onDone(judgeTapTest(heard))
      else {
        step = next
        fromS = block.atS
        setShown({ step, leftS: STEPS_S[step] })
      }
    })
  }, [recorder, onDone])
  return (
    <div className="listen-tap" role="status">
      <p className="listen-tap-guide">{say(GUIDE[shown.step])}</p>
      <p className="soft">{say('label_tap_left', { seconds: Math.ceil(shown.leftS) })}</p>
    </div>
  )
}

const VERDICTS = {
  'ground microphone': { key: 'tap_is_ground', severity: 'good' },
  phone: { key: 'tap_is_phone', severity: 'wrong' },
  nothing: { key: 'tap_is_nothing', severity: 'wrong' },
  unclear: { key: 'tap_is_unclear', severity: 'odd' },
} as const

function TapResult({ test }: { readonly test: TapTest }) {
  const { say, sayKeyed } = useSay()
  const { key, severity } = VERDICTS[test.verdict]
  return (
    <Notice severity={severity}>
      <p>{sayKeyed({ key, values: {} })}</p>
      <p className="soft">
        {say('label_taps_heard', { on_microphone: test.microphoneTaps, on_phone: test.phoneTaps })}
      </p>
    </Notice>
  )
}
