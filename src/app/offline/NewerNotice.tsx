import { useState } from 'react'
import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Notice } from '../look/widgets/Notice'
import { isUnderWay } from './isUnderWay'

/**
 * Asks whether a newer version is to be taken. Stands on the list of jobs only, outside of every job, and only in the tab
 * that may change the jobs: no other can be recording then.
 */
export function NewerNotice() {
  const { say } = useSay()
  const { offlineKeeper } = useApp()
  const isReady = useAppState((state) => state.session.newerVersion === 'ready')
  const isBusy = useAppState((state) => isUnderWay(state))
  const [isLater, setLater] = useState(false)
  if (!isReady || isBusy || isLater) return null
  return (
    <Notice
      severity="odd"
      actions={
        <>
          <Button onClick={() => void offlineKeeper.takeNewer()}>{say('do_take_newer')}</Button>
          <Button onClick={() => setLater(true)}>{say('do_later')}</Button>
        </>
      }
    >
      <p>{say('newer_ready')}</p>
    </Notice>
  )
}
