import { serveOrders } from '../inProcesses'
import { judgeSweep } from './judgeSweep'

/** Judges the sweeps that the bench sends, one after another. */
serveOrders(judgeSweep)
