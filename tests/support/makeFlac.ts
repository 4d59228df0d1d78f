import { readFileSync, writeFileSync } from 'node:fs'
import { flacOf } from '../../shared/flac/flacClip'

/** A WAV file as our own FLAC, for other programs to judge: `npx tsx tests/support/makeFlac.ts in.wav out.flac`. */
const [from, to] = process.argv.slice(2)
writeFileSync(to!, flacOf(Uint8Array.from(readFileSync(from!)))!)
