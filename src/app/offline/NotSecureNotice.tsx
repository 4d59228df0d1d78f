import { useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Notice } from '../look/widgets/Notice'

/** What cannot be had on a page that was not opened securely, and what can. */
export function NotSecureNotice() {
  const { sayKeyed } = useSay()
  const isSecure = useAppState(
    ({ session: { offline } }) => !(offline.stage === 'unable' && offline.why === 'not_secure'),
  )
  if (isSecure) return null
  return (
    <Notice severity="odd">
      <p>{sayKeyed({ key: 'page_not_secure', values: {} })}</p>
    </Notice>
  )
}
