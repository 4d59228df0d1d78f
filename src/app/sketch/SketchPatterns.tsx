import type { ReactNode } from 'react'
import type { Cover } from '../../../shared/line/line'
import type { Spot } from '../../../shared/sketch/arrangeSketch'

interface Texture {
  readonly widthPx: number
  readonly heightPx: number
  readonly marks: ReactNode
}

/** One texture a cover, told apart in grey: blades, crumbs, pebbles, a running bond, and the dots of cast concrete. */
const TEXTURES: Readonly<Record<Cover, Texture>> = {
  grass: {
    widthPx: 26,
    heightPx: 22,
    marks: <path d="M4 9q-.5-4-2.500-6M5.500 9q.5-4 3-7M17 20q-.5-3.500-3-5.500M18.500 20q.5-4.500 2.500-7" />,
  },
  soil: {
    widthPx: 22,
    heightPx: 18,
    marks: <path d="M3 4h2.500M14 3h1.500M9 9h2M18 10h2.500M4 14h1.500M13 15h3" />,
  },
  gravel: {
    widthPx: 26,
    heightPx: 20,
    marks: (
      <>
        <ellipse cx="6" cy="5" rx="3.500" ry="2.500" />
        <ellipse cx="18" cy="8" rx="2.500" ry="2" />
        <ellipse cx="9" cy="15" rx="2.500" ry="2" />
        <ellipse cx="21" cy="16.500" rx="3" ry="2.200" />
      </>
    ),
  },
  pavers: { widthPx: 32, heightPx: 22, marks: <path d="M0 .5h32M0 11.500h32M8 .5v11M24 11.500v11" /> },
  slab: {
    widthPx: 40,
    heightPx: 34,
    marks: <path d="M6 7h1M20 4h1M33 9h1M12 18h1M27 20h1M5 29h1M36 30h1m-22-4 3 5h-6zM30 11l2.500 4.500h-5z" />,
  },
  other: { widthPx: 20, heightPx: 20, marks: <path d="m3 8 3-3M13 18l3-3" /> },
}

/** Ground and hatches. They move with the paper, and do not grow with it. */
export function SketchPatterns({ id, origin }: { readonly id: string; readonly origin: Spot }) {
  const transform = `translate(${origin.x} ${origin.y})`
  return (
    <defs>
      {Object.entries(TEXTURES).map(([cover, { widthPx, heightPx, marks }]) => (
        <pattern
          key={cover}
          id={`${id}-${cover}`}
          width={widthPx}
          height={heightPx}
          patternUnits="userSpaceOnUse"
          patternTransform={transform}
        >
          <g className="sketch-texture">{marks}</g>
        </pattern>
      ))}
      <pattern
        id={`${id}-lines`}
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform={`${transform} rotate(45)`}
      >
        <path className="sketch-hatch" d="M1 0v7" />
      </pattern>
      <pattern
        id={`${id}-over`}
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform={`${transform} rotate(-45)`}
      >
        <path className="sketch-hatch-over" d="M1 0v6" />
      </pattern>
      <pattern
        id={`${id}-cross`}
        width="8"
        height="8"
        patternUnits="userSpaceOnUse"
        patternTransform={`${transform} rotate(45)`}
      >
        <path className="sketch-hatch-over" d="M1 0v8M0 1h8" />
      </pattern>
    </defs>
  )
}
