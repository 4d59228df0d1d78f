/** What a shape stands for; the painter knows its stroke. All are told apart in black and white. */
export type Look =
  | 'axis'
  | 'rule'
  | 'asked'
  | 'band'
  | 'fit'
  | 'reading'
  | 'on'
  | 'off'
  | 'pipe'
  | 'bore'
  | 'ground'
  | 'likelihood'
  | 'window'
  | 'decision'
  | 'faint'
  | 'mark'
  | 'fill'
  | 'peg'
  | 'peg-best'

export type Shape =
  | { readonly kind: 'path'; readonly d: string; readonly look: Look }
  | {
      readonly kind: 'text'
      readonly x: number
      readonly y: number
      readonly anchor: 'start' | 'middle' | 'end'
      readonly text: string
      /** On what is dark. */
      readonly light?: true
    }

/** A drawing of the report as plain shapes, which screen, print and a file paint alike. */
export interface Picture {
  readonly widthPx: number
  readonly heightPx: number
  /** What it shows, in words. */
  readonly label: string
  readonly shapes: readonly Shape[]
}
