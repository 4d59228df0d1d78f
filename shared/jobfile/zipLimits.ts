/**
 * What is taken of a zip that nobody vouches for. Chosen: a job of a hundred points with minutes at each, and small enough
 * for a phone. The page's other reader of zips has the same bounds.
 */
export const ZIP_LIMITS = {
  files: 20_000,
  directoryBytes: 8e6,
  totalBytes: 2e9,
  fileBytes: 600e6,
  /** Of a file that is deflated: sound is stored, and only texts shrink. */
  deflatedBytes: 100e6,
  /** Deflate cannot shrink anything by more than 1032 : 1; sound and texts stay far below this. */
  ratio: 200,
} as const
