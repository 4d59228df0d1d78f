import { type CSSProperties, useId } from 'react'
import type { Arranged, Spot } from '../../../shared/sketch/arrangeSketch'
import type { DrawCommand, DrawPolygon, DrawPolyline } from '../../../shared/sketch/drawList'
import { wordsOf } from '../../../shared/words/sentence'
import { useSay } from '../frame/useSay'
import { SketchMark } from './SketchMark'
import { SketchPatterns } from './SketchPatterns'

export interface SketchPictureProps {
  readonly commands: readonly DrawCommand[]
  readonly arranged: Arranged
  readonly toSpot: (place: { readonly xM: number; readonly yM: number }) => Spot
}

/** Ground, band, pipe, marks and letters. For the eye: the twin list and the pegs have the words. */
export function SketchPicture({ commands, arranged, toSpot }: SketchPictureProps) {
  const { units } = useSay()
  const id = useId()
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus
    <g aria-hidden="true">
      <SketchPatterns id={id} origin={toSpot({ xM: 0, yM: 0 })} />
      {commands.map((command) => {
        if (command.kind === 'polygon') {
          return <Surface key={command.id} polygon={command} patternId={id} pathOf={pathOf(command, toSpot)} />
        }
        if (command.kind === 'polyline')
          return <Stroke key={command.id} polyline={command} d={pathOf(command, toSpot)} />
        if (command.kind === 'mark') return <SketchMark key={command.id} mark={command} spot={toSpot(command.at)} />
        return null
      })}
      {arranged.texts.map(({ text, x, y }) => (
        <text
          key={text.id}
          className={`sketch-text sketch-text-${text.size}`}
          x={x}
          y={y}
          dy="0.35em"
          textAnchor="middle"
        >
          {wordsOf(text.text, units).text}
        </text>
      ))}
    </g>
  )
}

const HATCHES = { none: null, lines: 'over', cross: 'cross' } as const

interface SurfaceProps {
  readonly polygon: DrawPolygon
  readonly patternId: string
  readonly pathOf: string
}

function Surface({ polygon: { ink, strength, hatch }, patternId, pathOf: d }: SurfaceProps) {
  if (ink === 'window') return <path className="sketch-window" d={`${d}z`} fill={`url(#${patternId}-lines)`} />
  if (ink !== 'likelihood') {
    return (
      <>
        <path className={`sketch-ground sketch-ground-${ink}`} d={`${d}z`} />
        <path d={`${d}z`} fill={`url(#${patternId}-${ink})`} />
      </>
    )
  }
  const over = HATCHES[hatch]
  return (
    <>
      <path className="sketch-likelihood" d={`${d}z`} style={{ '--strength': `${strength * 100}%` } as CSSProperties} />
      {over && <path d={`${d}z`} fill={`url(#${patternId}-${over})`} />}
    </>
  )
}

function Stroke({ polyline: { ink, widthPx, stroke }, d }: { readonly polyline: DrawPolyline; readonly d: string }) {
  return (
    <>
      <path className={`sketch-stroke sketch-${ink} sketch-${stroke}`} d={d} strokeWidth={widthPx} />
      {ink === 'pipe' && <path className="sketch-stroke sketch-bore" d={d} strokeWidth={widthPx - 3} />}
    </>
  )
}

function pathOf({ places }: DrawPolyline | DrawPolygon, toSpot: SketchPictureProps['toSpot']): string {
  return places
    .map((place, i) => {
      const { x, y } = toSpot(place)
      return `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`
    })
    .join('')
}
