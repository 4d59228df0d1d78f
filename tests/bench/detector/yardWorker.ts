import { serveOrders } from '../inProcesses'
import { hearYard } from './hearYard'

/** Hears the yards that the bench sends, one after another. */
serveOrders(hearYard)
