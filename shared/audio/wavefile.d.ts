/**
 * The part of wavefile 11 that this project uses, by the file that Node and Vite both resolve to the same thing: its
 * `module` entry has a named export only and its `main` entry a default one only.
 */
declare module 'wavefile/dist/wavefile.js' {
  interface CuePoint {
    dwName: number
    dwPosition: number
    fccChunk: string
    dwChunkStart: number
    dwBlockStart: number
    dwSampleOffset: number
  }
  interface ListChunk {
    chunkId: string
    chunkSize: number
    format: string
    subChunks: { chunkId: string; chunkSize: number; dwName: number; value: string }[]
  }
  class WaveFile {
    constructor(bytes?: Uint8Array)
    container: string
    bitDepth: string
    fmt: Record<string, number | string | number[]>
    ds64: Record<string, number | string>
    bext: Record<string, number | string | number[]>
    cue: { chunkId: string; chunkSize: number; dwCuePoints: number; points: CuePoint[] }
    LIST: ListChunk[]
    fromScratch(
      channels: number,
      sampleRateHz: number,
      bitDepth: string,
      samples: ArrayLike<number> | ArrayLike<number>[],
      options?: { container?: string },
    ): void
    toBuffer(): Uint8Array
    /** Integers at their own scale, channel by channel; a plain array when there is one channel. */
    getSamples(interleaved: boolean): Float64Array | Float64Array[]
    toRIFX(): void
    toRIFF(): void
    listCuePoints(): { position: number; label: string; dwName: number; dwSampleOffset: number }[]
  }
  const wavefile: { WaveFile: typeof WaveFile }
  // biome-ignore lint/style/noDefaultExport: this is how the package is
  export default wavefile
}
