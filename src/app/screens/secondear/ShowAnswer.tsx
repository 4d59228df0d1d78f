import { useState } from 'react'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Notice } from '../../look/widgets/Notice'
import { changeReview } from '../../review/reviews'

/** The way past listening blind, for all lines of the job: it is asked twice, and opinions tell of it afterwards. */
export function ShowAnswer({ jobId }: { readonly jobId: string }) {
  const { say } = useSay()
  const app = useApp()
  const lines = useAppState((state) => state.job?.lines ?? null)
  const [isAsked, setAsked] = useState(false)
  const show = () => {
    for (const { id } of lines ?? []) {
      void changeReview(app, { jobId, lineId: id }, (review) => ({ ...review, blind: false, laid: true })).catch(
        () => undefined, // it is asked again the next time
      )
    }
  }
  if (!isAsked) {
    return (
      <Button kind="bare" onClick={() => setAsked(true)}>
        {say('do_show_answer')}
      </Button>
    )
  }
  return (
    <Notice
      severity="odd"
      actions={
        <>
          <Button kind="decision" onClick={show}>
            {say('do_show_answer_sure')}
          </Button>
          <Button onClick={() => setAsked(false)}>{say('do_cancel')}</Button>
        </>
      }
    >
      <p>{say('blind_show_sure')}</p>
    </Notice>
  )
}
