import type { CSSProperties } from 'react'
import { Icon } from '../look/widgets/Icon'
import { type Route, routeHash } from '../route'
import { SCREEN_NAMES, type ScreenName } from '../screens/screenNames'
import { SCREENS } from '../screens/screens'
import { useAppState } from './useApp'
import { useSay } from './useSay'
import './Bar.css'

/** Two rows on a phone, however many screens there are. */
const COLUMNS = { '--bar-columns': Math.ceil(SCREEN_NAMES.length / 2) } as CSSProperties

/** The screens: along the foot of a phone, down the side of a desk. */
export function Bar({ route }: { readonly route: Route }) {
  const { say } = useSay()
  const jobId = useAppState((state) => state.job?.id ?? null)
  const lineId = useAppState((state) => state.session.lineId)
  const hrefOf = (screen: ScreenName) => {
    if (!SCREENS[screen].needsJob) return routeHash({ screen, jobId: null, lineId: null })
    return jobId === null || lineId === null ? null : routeHash({ screen, jobId, lineId })
  }
  return (
    <nav className="bar" aria-label={say('label_screens')}>
      <p className="bar-name">{say('label_app')}</p>
      <ul className="bar-list" style={COLUMNS}>
        {SCREEN_NAMES.map((screen) => (
          <li key={screen}>
            <BarLink screen={screen} href={hrefOf(screen)} isHere={screen === route.screen} />
          </li>
        ))}
      </ul>
    </nav>
  )
}

interface BarLinkProps {
  readonly screen: ScreenName
  /** `null` while no job is open. */
  readonly href: string | null
  readonly isHere: boolean
}

function BarLink({ screen, href, isHere }: BarLinkProps) {
  const { say } = useSay()
  const { words, shortWords, icon } = SCREENS[screen]
  const inside = (
    <>
      <Icon name={icon} />
      <span className={shortWords && 'bar-long'}>{say(words)}</span>
      {shortWords && <span className="bar-short">{say(shortWords)}</span>}
    </>
  )
  if (href === null) {
    return (
      // biome-ignore lint/a11y/useValidAnchor: a link without a target is how HTML says "not now"
      <a className="bar-link" role="link" aria-disabled="true">
        {inside}
      </a>
    )
  }
  return (
    <a
      className="bar-link"
      href={href}
      aria-current={isHere ? 'page' : undefined}
      ref={isHere ? keepInView : undefined}
    >
      {inside}
    </a>
  )
}

/** On a phone the bar is wider than the screen. */
function keepInView(link: HTMLAnchorElement | null): void {
  link?.scrollIntoView({ block: 'nearest', inline: 'nearest' })
}
