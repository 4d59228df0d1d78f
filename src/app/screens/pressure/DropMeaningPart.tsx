import { dropMeaning } from '../../../../shared/pressure/dropMeaning'
import type { HoldFit } from '../../../../shared/pressure/holdFit'
import type { FilledLine } from '../../../../shared/pressure/lineCompliance'
import { PIPE_WALLS } from '../../../../shared/pressure/pipeWalls'
import { KPA_PER } from '../../../../shared/pressure/pressureUnit'
import { storedEnergy } from '../../../../shared/pressure/storedEnergy'
import type { KnownPipe } from '../../../../shared/pressure/temperatureEffect'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import { PipeSizeField } from '../../pipe/PipeSizeField'
import type { TestPartProps } from './pressurePart'
import type { Judged } from './useJudgement'

interface DropMeaningPartProps extends TestPartProps {
  readonly judged: Judged | null
  readonly pipe: KnownPipe
}

/** A drop as water and as a hole, and why a slow one is no proof of a small leak. */
export function DropMeaningPart({ line, test, disabled, judged, pipe }: DropMeaningPartProps) {
  const { say } = useSay()
  const fit = judged?.judgement.fit ?? null
  if (judged === null || judged.judgement.verdict !== 'drops' || fit === null) return null
  const lengthM = test.lengthM ?? line.line.lengthM
  const { size } = pipe
  return (
    <Panel heading={say('heading_meaning')}>
      <PipeSizeField lineId={line.id} line={line.line} disabled={disabled} />
      {size === null || lengthM === null ? (
        <p>{say('meaning_needs')}</p>
      ) : (
        <Meaning filled={{ size, wall: pipe.wall ?? PIPE_WALLS.pvc, lengthM }} fit={fit} unit={test.unit} />
      )}
    </Panel>
  )
}

interface MeaningProps {
  readonly filled: FilledLine
  readonly fit: HoldFit
  readonly unit: 'psi' | 'kPa' | 'bar'
}

function Meaning({ filled, fit, unit }: MeaningProps) {
  const { say } = useSay(unit)
  const gaugePa = Math.max(1000, 1000 * (fit.startKpa - fit.fallKpa.value / 2))
  const meaning = dropMeaning(filled, { fallKpaPerMin: fit.fallKpaPerMin, gaugePa })
  const { airJ, waterAndWallJ } = storedEnergy(filled, Math.max(0, 1000 * fit.startKpa))
  return (
    <ul className="hold-reasons">
      <li>{say('meaning_gives', { unit, line_ml: meaning.lineMlPerKpa * KPA_PER[unit] })}</li>
      <li>
        {say('meaning_loss', {
          least_ml: meaning.leastMlPerMin,
          most_ml: meaning.mostMlPerMin,
          air_ml: meaning.airMl,
        })}
      </li>
      <li>{say('meaning_hole', { least_mm: meaning.leastHoleMm, most_mm: meaning.mostHoleMm })}</li>
      <li>
        <strong>{say('meaning_air', { air_ml: meaning.doublingAirMl })}</strong>
      </li>
      <li>{say('meaning_allowance', { allowance_ml: meaning.allowanceMlPerMin })}</li>
      <li>{say('meaning_energy', { water_j: waterAndWallJ, air_j: airJ })}</li>
    </ul>
  )
}
