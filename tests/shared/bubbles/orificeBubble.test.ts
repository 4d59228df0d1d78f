import { it } from 'vitest'
import { minnaertPitchHz } from '../../../shared/bubbles/minnaert'
import { briskBubbleRadiusM, slowBubbleRadiusM } from '../../../shared/bubbles/orificeBubble'
import { close } from '../../support/close'

it('lets a bubble of 2.2344 mm, 1470.7 Hz, go from a hole of 2 mm across', () => {
  // 2π·a·σ = (4/3)π·R³·ρ·g, a hole of radius a. [Tate1864] [CRCWater]
  close(slowBubbleRadiusM(0.001), 2.2344e-3, { abs: 1e-7, because: "Tate's balance by hand" })
  close(minnaertPitchHz(slowBubbleRadiusM(0.001)), 1470.7, { abs: 0.1, because: 'Minnaert by hand' })
})

it('doubles the bubble for eight times the hole', () => {
  close(slowBubbleRadiusM(0.008) / slowBubbleRadiusM(0.001), 2, { rel: 1e-12, because: 'a cube root' })
})

it('blows bubbles of 3.3139 mm by 5 ml of air a second', () => {
  // V = 1.378·Q^(6/5)·g^(−3/5). [DavidsonSchuler1960]
  close(briskBubbleRadiusM(5e-6), 3.3139e-3, { rel: 1e-3, because: 'Davidson and Schuler by hand, constant 1.378' })
})
