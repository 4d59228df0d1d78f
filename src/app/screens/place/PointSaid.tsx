import type { PointAnswer } from '../../../../shared/locate/answer'
import { useSay } from '../../frame/useSay'

/** What the clips of a point say, in a sentence or two. */
export function PointSaid({ point: { evidence } }: { readonly point: PointAnswer }) {
  const { say } = useSay()
  const { overFloorDb, bestBandHz, ringRatePerS, medianPitchHz } = evidence
  if (evidence.clipsUsed === 0) return <span>{say('point_silent')}</span>
  return (
    <span>
      {overFloorDb !== null && bestBandHz !== null && (
        <>{say('point_over_floor', { over_floor_db: overFloorDb, band_hz: bestBandHz })} </>
      )}
      {ringRatePerS !== null && ringRatePerS > 0 && medianPitchHz !== null
        ? say('point_rings', { rate_per_s: ringRatePerS, pitch_hz: medianPitchHz })
        : say('point_no_rings')}
    </span>
  )
}
