import { serveOrders } from '../inProcesses'
import { hearRealSound } from './hearRealSound'
import { hearYard, type YardOrder } from './hearYard'

/** What is to be heard: a yard, or a sound of the catalogue. */
export type SoundOrder = YardOrder | { readonly sound: string }

/** Hears the yards and sounds that the bench sends, one after another. */
serveOrders((order: SoundOrder) => ('sound' in order ? hearRealSound(order.sound) : hearYard(order)))
