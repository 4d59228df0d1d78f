import { Component, type ReactNode } from 'react'
import { Button } from '../look/widgets/Button'
import { Notice } from '../look/widgets/Notice'
import { useSay } from './useSay'

interface ScreenGuardProps {
  readonly children: ReactNode
}

/** A fault in one screen must not take the others, or the way to them, away. */
export class ScreenGuard extends Component<ScreenGuardProps, { readonly why: string | null }> {
  override state = { why: null }

  static getDerivedStateFromError(error: unknown) {
    return { why: error instanceof Error ? error.message : String(error) }
  }

  override render() {
    return this.state.why === null ? this.props.children : <ScreenFault why={this.state.why} />
  }
}

function ScreenFault({ why }: { readonly why: string }) {
  const { say } = useSay()
  return (
    <Notice severity="wrong" actions={<Button onClick={() => location.reload()}>{say('do_reload')}</Button>}>
      <p>{say('page_screen_fault', { why })}</p>
    </Notice>
  )
}
