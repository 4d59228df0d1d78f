const STEPS = [
  ['year', 365 * 86_400],
  ['month', 30 * 86_400],
  ['day', 86_400],
  ['hour', 3600],
  ['minute', 60],
] as const

let format: Intl.RelativeTimeFormat | null = null

/** How long ago, as this device says it: "3 days ago". */
export function ageOf(timeS: number, nowS: number): string {
  const agoS = Math.max(0, nowS - timeS)
  const [unit, unitS] = STEPS.find(([, seconds]) => agoS >= seconds) ?? STEPS[4]
  format ??= new Intl.RelativeTimeFormat(undefined, { numeric: 'auto' }) // making one takes long
  return format.format(-Math.floor(agoS / unitS), unit)
}
