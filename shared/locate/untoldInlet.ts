import { joinedFits } from './joinedFits'
import { knownSources } from './knownSources'
import { type Scan, type ScanInput, type TriedPlace, tryPlace } from './scanLine'

/** Air is let in at an end of the line, or at a riser a little past it, spacings. Common practice, no source; the figures are chosen. */
const PAST_END_SPACINGS = [0.5, 1.5]
/** Places on the line where the leak may be instead: summits of the scan a spacing apart, the best first. Chosen. */
const MOST_LEAKS = 3
/**
 * How much better leak and inlet together must explain the sweep than a leak alone, nepers. Calibrated on the synthetic
 * yard: of 69 sweeps without an inlet none came to 2; what a free spectrum of its own costs is in it already.
 */
const NEPERS_NEEDED = 3

/**
 * Looks for an air inlet that nobody told of. Air is let in somewhere in every sweep; where that is not told, its hiss
 * past an end of the line would be taken for the leak, as it is heard at more points and often the louder.
 *
 * @param input Of a line whose inlet was not told. @param scan Of a leak alone.
 * @returns Where the inlet is taken to be, m along and past an end; `null` where a leak alone explains the sweep.
 */
export function untoldInlet(input: ScanInput, scan: Scan): number | null {
  const alone = scan.tried.reduce(better)
  const leaks = summitsOnLine(input, scan)
  const tried = input.range.flatMap((endM, end) => {
    const nearEnd = scan.tried.reduce((a, b) => (Math.abs(b.alongM - endM) < Math.abs(a.alongM - endM) ? b : a))
    return PAST_END_SPACINGS.flatMap((spacings) => {
      const airInletM = endM + (end === 0 ? -1 : 1) * spacings * input.spacingM
      const line = { ...input.line, airInletM }
      const told = { ...input, line, known: knownSources(line, input.model) }
      return leaks.map((leak) => {
        const start = joinedFits(input.model, leak.fit, nearEnd.fit)
        return { airInletM, logEvidence: tryPlace(told, leak.alongM, start, true).logEvidence }
      })
    })
  })
  const best = tried.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a), {
    airInletM: Number.NaN,
    logEvidence: Number.NEGATIVE_INFINITY,
  })
  return best.logEvidence > alone.logEvidence + NEPERS_NEEDED ? best.airInletM : null
}

function summitsOnLine({ range, spacingM }: ScanInput, { tried }: Scan): TriedPlace[] {
  const summits = tried.filter(({ alongM, logEvidence }, i) => {
    const before = tried[i - 1]?.logEvidence ?? Number.NEGATIVE_INFINITY
    const after = tried[i + 1]?.logEvidence ?? Number.NEGATIVE_INFINITY
    return logEvidence >= before && logEvidence >= after && range[0] <= alongM && alongM <= range[1]
  })
  const chosen: TriedPlace[] = []
  for (const summit of summits.sort((a, b) => b.logEvidence - a.logEvidence || a.alongM - b.alongM)) {
    if (chosen.length === MOST_LEAKS) break
    if (chosen.every((each) => Math.abs(each.alongM - summit.alongM) >= spacingM)) chosen.push(summit)
  }
  return chosen
}

function better(a: TriedPlace, b: TriedPlace): TriedPlace {
  return b.logEvidence > a.logEvidence ? b : a
}
