/** What a detector says of a clip, as one more piece of evidence. */
export interface Detected {
  /** ln of how much likelier the clip is with a leak than without, already less where the detector may not be trusted. */
  readonly nepers: number
  /** That it is a leak, calibrated on as many leaks as the detector learnt from, 0 to 1. */
  readonly probability: number
  /** What the detector may weigh here, 0 to 1. */
  readonly trust: number
  /** Told, and not among what it learnt from. */
  readonly isNewDevice: boolean
  readonly isNewCover: boolean
}
