/** Where a fit stands. */
export interface Parameters {
  /** Shape, then a spectrum a source, then the floor. */
  readonly shared: Float64Array
  /**
   * Numbers of each setting-down (`OWN_AT`): gain (dB), tilt (dB per octave), floor offset (dB), floor tilt, and how the
   * floor changed from the air-off clip to the air-on clip (dB).
   */
  readonly own: Float64Array
}
