import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Icon } from '../look/widgets/Icon'

export interface SketchZoomProps {
  readonly canGrow: boolean
  readonly isFitted: boolean
  readonly onGrow: () => void
  readonly onShrink: () => void
  readonly onFit: () => void
}

export function SketchZoom({ canGrow, isFitted, onGrow, onShrink, onFit }: SketchZoomProps) {
  const { say } = useSay()
  return (
    <div className="sketch-zoom">
      <Button iconOnly icon={<Icon name="add" />} disabled={!canGrow} onClick={onGrow}>
        {say('do_zoom_in')}
      </Button>
      <Button iconOnly icon={<Less />} disabled={isFitted} onClick={onShrink}>
        {say('do_zoom_out')}
      </Button>
      <Button iconOnly icon={<Whole />} disabled={isFitted} onClick={onFit}>
        {say('do_zoom_fit')}
      </Button>
    </div>
  )
}

function Less() {
  return (
    <svg width="24" height="24" viewBox="0 0 24 24" className="sketch-icon" aria-hidden="true">
      <path d="M5 12h14" />
    </svg>
  )
}

function Whole() {
  return (
    <svg width="24" height="24" viewBox="0 0 24 24" className="sketch-icon" aria-hidden="true">
      <path d="M4 9V4h5M15 4h5v5M20 15v5h-5M9 20H4v-5M8 15h4V9h4" />
    </svg>
  )
}
