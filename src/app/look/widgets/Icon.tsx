import type { ReactNode } from 'react'

const SHAPES = {
  jobs: <path d="M5 4.5h14v15H5zM9 9h6M9 13h6" />,
  line: <path d="M3 18h7V8h11M3 15v6M21 5v6" />,
  listen: (
    <path d="M12 3v8M8.5 6.500a3.500 3.500 0 0 1 7 0V9a3.500 3.500 0 0 1-7 0zM12 12.500V21M8 21h8M4 16c1.500 1 3 1.500 4.500 1.700M20 16c-1.500 1-3 1.500-4.500 1.700" />
  ),
  place: (
    <path d="M12 21v-5M8 5.5h8a1.5 1.5 0 0 1 1.5 1.5v6.5A1.5 1.5 0 0 1 16 15H8a1.5 1.5 0 0 1-1.5-1.500V7A1.5 1.5 0 0 1 8 5.500zM5 21h14" />
  ),
  pressure: <path d="M4 5v14h16M8 9l3.500 1.500 3.500 3.500 4 1.500M8 6.500v5M11.500 8v5M15 11.500v5" />,
  mend: <path d="M2.5 12h5M16.500 12h5M7.500 8.500h9v7h-9zM10.500 8.500v7M13.500 8.500v7" />,
  report: <path d="M6 3.500h8l4 4V20.500H6zM13.500 3.500V8H18M9 12h6M9 16h6" />,
  practice: (
    <path d="M4.500 13v4.500h3.500V13zM16 13v4.500h3.500V13zM4.500 13a7.500 7.500 0 0 1 15 0M9.500 9.500l2 2 3.500-4" />
  ),
  ears: (
    <path d="M8.5 19c-2 0-2.300-1.500-2.800-3C5 14 3 12.500 3 9.500a5 5 0 0 1 8-4M6.500 10a2 2 0 0 1 3.500-1.300M15.500 19c2 0 2.300-1.500 2.800-3 .7-2 2.700-3.500 2.700-6.500a5 5 0 0 0-10 0c0 1 .4 1.800.4 1.800M17.500 10a2 2 0 0 0-3.500-1.300" />
  ),
  help: (
    <path d="M9 9a3 3 0 1 1 4.5 2.600c-1 .6-1.5 1.2-1.5 2.400M12 18v.5M3.5 12a8.5 8.5 0 1 0 17 0 8.5 8.5 0 1 0-17 0" />
  ),
  undo: <path d="M8 5 4 9l4 4M4 9h10a5.5 5.5 0 0 1 0 11H9" />,
  redo: <path d="m16 5 4 4-4 4M20 9H10a5.5 5.5 0 0 0 0 11h5" />,
  add: <path d="M12 5v14M5 12h14" />,
  remove: <path d="M5 7h14M9.5 7V4.500h5V7M7 7l.8 12.500h8.400L17 7" />,
  close: <path d="m6 6 12 12M18 6 6 18" />,
  save: <path d="M12 4v10M8 10.5l4 4 4-4M4 16v4h16v-4" />,
  open: <path d="M3.5 19V5.500H9l2 2.500h9.500V19zM12 11v5M9.5 13.5 12 11l2.5 2.5" />,
  next: <path d="m9 5 7 7-7 7" />,
} as const satisfies Record<string, ReactNode>

export type IconName = keyof typeof SHAPES

/** A small drawing beside words, never instead of them. */
export function Icon({ name }: { readonly name: IconName }) {
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
