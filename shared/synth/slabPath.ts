import { type Medium, soilPower } from './groundPath'

/** A slab as a plate: it carries sound sideways with little loss and has a resonance of its own on its bed. */
export interface Plate {
  readonly thicknessM: number
  /** Loss factor of the plate on its bed, 0.05 to 0.3. Chosen. */
  readonly lossFactor: number
  /** Share of the power that enters the plate and spreads in it, dB. Chosen. */
  readonly sidewaysDb: number
  /** Plate on its bed as mass on spring. Chosen: 80 to 250 Hz, quality 2 to 4. */
  readonly resonanceHz: number
  readonly resonanceQuality: number
}

/** Speed of longitudinal waves in concrete, m/s. Handbook value from memory. [CremerHeckl] */
const CONCRETE_SPEED_M_PER_S = 3400

/** Speed of bending waves, m/s: √(1.8·c·h·f). 782 m/s for 0.10 m at 1 kHz. [CremerHeckl] */
export function bendingSpeedMPerS(thicknessM: number, frequencyHz: number): number {
  return Math.sqrt(1.8 * CONCRETE_SPEED_M_PER_S * thicknessM * frequencyHz)
}

/**
 * Power left of a bending wave some way from where it was driven: cylindrical spreading (amplitude r^−0.5, held level
 * within one burial depth) and the plate's loss, amplitude e^(−k·loss·distance/4).
 */
export function sidewaysPower(plate: Plate, frequencyHz: number, depthM: number, distanceM: number): number {
  const k = (2 * Math.PI * frequencyHz) / bendingSpeedMPerS(plate.thicknessM, frequencyHz)
  return (depthM / (depthM + distanceM)) * Math.exp((-k * plate.lossFactor * distanceM) / 2)
}

/**
 * Power gain of the plate on its bed, 1 well below resonance: a resonance peak of height quality², and above eight
 * times its frequency the plate's mass, −6 dB an octave. The shape is chosen, no source.
 */
export function plateResponse(plate: Plate, frequencyHz: number): number {
  const x = frequencyHz / plate.resonanceHz
  const q2 = plate.resonanceQuality ** 2
  const peak = 1 + (q2 - 1) / (1 + q2 * (x - 1 / x) ** 2)
  return peak / (1 + (x / 8) ** 2)
}

/**
 * Power on a slab from a source in the soil below or beside it: what comes up through the soil right there, and what
 * entered the slab at its nearest place to the source and ran along it.
 *
 * @param toSensorM From epicentre to sensor. @param toFootM From epicentre to where the slab is nearest to it.
 * @param footToSensorM Along the slab.
 */
export function slabPower(
  plate: Plate,
  medium: Medium,
  frequencyHz: number,
  path: { depthM: number; toSensorM: number; toFootM: number; footToSensorM: number },
): number {
  const local = soilPower(medium, frequencyHz, path.depthM, path.toSensorM)
  const entered = soilPower(medium, frequencyHz, path.depthM, path.toFootM) * 10 ** (plate.sidewaysDb / 10)
  const sideways = sidewaysPower(plate, frequencyHz, path.depthM, path.footToSensorM)
  return (local + entered * sideways) * plateResponse(plate, frequencyHz)
}
