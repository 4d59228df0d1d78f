import { Suspense, useEffect } from 'react'
import { useRoute } from '../route'
import { fetchScreens, SCREENS } from '../screens/screens'
import { Bar } from './Bar'
import { Head } from './Head'
import { LeftNotices } from './LeftNotices'
import { PageNotices } from './PageNotices'
import { ScreenGuard } from './ScreenGuard'
import { useAppState } from './useApp'
import { useSay } from './useSay'
import { useShortcuts } from './useShortcuts'
import './Page.css'

/** What stands round every screen. */
export function Page() {
  const { say } = useSay()
  const route = useRoute()
  const look = useAppState((state) => state.device.look)
  const hasJob = useAppState((state) => state.job !== null && state.session.lineId !== null)
  useShortcuts()
  useEffect(() => void fetchScreens(), [])
  useEffect(() => {
    if (look === 'auto') delete document.documentElement.dataset.look
    else document.documentElement.dataset.look = look
  }, [look])
  const { words, needsJob, Screen } = SCREENS[route.screen]
  useEffect(() => {
    document.title = `${say(words)} · ${say('label_app')}`
    window.scrollTo(0, 0)
    // The link that led here stays where it is in the bar; whatever else led here is gone with its screen.
    const here = document.activeElement
    if (here === null || here === document.body) document.getElementById('content')?.focus({ preventScroll: true })
  }, [words, say])
  return (
    <div className="page">
      <button type="button" className="page-skip" onClick={() => document.getElementById('content')?.focus()}>
        {say('label_skip')}
      </button>
      <Head screen={route.screen} />
      <Bar route={route} />
      <main id="content" className="page-main" tabIndex={-1}>
        <PageNotices place="page" />
        <LeftNotices />
        <ScreenGuard key={route.screen}>
          <Suspense>{(hasJob || !needsJob) && <Screen />}</Suspense>
        </ScreenGuard>
      </main>
    </div>
  )
}
