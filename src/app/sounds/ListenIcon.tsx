import type { ReactNode } from 'react'

const SHAPES = {
  play: <path d="M8 5v14l11-7z" fill="currentColor" />,
  pause: <path d="M8 5v14M16 5v14" strokeWidth="4" />,
  ringNext: <path d="M5 12h9M10.500 7.500 15 12l-4.500 4.500M17.500 12a2 2 0 1 0 4 0 2 2 0 1 0-4 0" />,
  ringPrevious: <path d="M19 12h-9M13.500 7.500 9 12l4.500 4.500M2.500 12a2 2 0 1 0 4 0 2 2 0 1 0-4 0" />,
  zoomIn: (
    <path d="M4 10.500a6.500 6.500 0 1 0 13 0 6.500 6.500 0 1 0-13 0M15.500 15.500 20 20M10.500 7.500v6M7.500 10.500h6" />
  ),
  zoomOut: <path d="M4 10.500a6.500 6.500 0 1 0 13 0 6.500 6.500 0 1 0-13 0M15.500 15.500 20 20M7.500 10.500h6" />,
} as const satisfies Record<string, ReactNode>

/** Small drawings of the player, beside words. */
export function ListenIcon({ name }: { readonly name: keyof typeof SHAPES }) {
  return (
    <svg
      width="24"
      height="24"
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.9"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {SHAPES[name]}
    </svg>
  )
}
