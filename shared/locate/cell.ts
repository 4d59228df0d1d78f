/** One band of one clip. A fit makes one and moves it along, so that its loops need not allocate. */
export interface Cell {
  /** Setting-down. */
  k: number
  /** Band. */
  b: number
  air: 'on' | 'off'
  /** The floor as the air-off clip of the same setting-down tells it, dBFS; `null` where there is none. */
  toldDb: number | null
}
