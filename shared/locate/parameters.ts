/** Where a fit stands. */
export interface Parameters {
  /** Shape, then a spectrum a source, then the floor. */
  readonly shared: Float64Array
  /** Four numbers of each setting-down (`OWN_AT`): gain (dB), tilt (dB per octave), floor offset (dB), floor tilt. */
  readonly own: Float64Array
}
