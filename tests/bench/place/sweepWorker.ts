import { judgeSweep, type SweepOrder } from './judgeSweep'

/** Judges the sweeps that the bench sends, one after another. */
process.on('message', (order: SweepOrder) => {
  try {
    process.send!({ judged: judgeSweep(order) })
  } catch (error) {
    process.send!({ error: error instanceof Error ? (error.stack ?? error.message) : String(error) })
  }
})
process.on('disconnect', () => process.exit())
