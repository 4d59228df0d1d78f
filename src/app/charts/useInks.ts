import { useSyncExternalStore } from 'react'

/** Colours and letters of the page, for what is painted on a canvas. */
export interface Inks {
  readonly look: 'light' | 'dark'
  readonly paper: string
  readonly sheet: string
  readonly ink: string
  readonly soft: string
  readonly rule: string
  readonly hair: string
  readonly water: string
  readonly waterPale: string
  /** A font of the page at the size of its text. */
  readonly letters: string
}

let last: Inks | null = null

/** The colours as they are now; renders again when the page turns dark or light. */
export function useInks(): Inks {
  return useSyncExternalStore(onLookChange, () => {
    const now = readInks()
    if (last === null || Object.entries(now).some(([name, value]) => last![name as keyof Inks] !== value)) last = now
    return last
  })
}

function onLookChange(listener: () => void): () => void {
  const scheme = window.matchMedia('(prefers-color-scheme: dark)')
  const observer = new MutationObserver(listener)
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-look'] })
  scheme.addEventListener('change', listener)
  return () => {
    observer.disconnect()
    scheme.removeEventListener('change', listener)
  }
}

function readInks(): Inks {
  const style = getComputedStyle(document.documentElement)
  const colour = (name: string) => style.getPropertyValue(`--${name}`).trim()
  return {
    look: style.colorScheme === 'dark' ? 'dark' : 'light',
    paper: colour('paper'),
    sheet: colour('sheet'),
    ink: colour('ink'),
    soft: colour('soft'),
    rule: colour('rule'),
    hair: colour('hair'),
    water: colour('water'),
    waterPale: colour('water-pale'),
    letters: getComputedStyle(document.body).fontFamily,
  }
}
