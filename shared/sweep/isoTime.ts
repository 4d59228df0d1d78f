/**
 * Seconds since 1970-01-01 UTC of an ISO 8601 date and time with an offset.
 *
 * @param text As `2026-05-04T09:30:00+02:00` or `2026-05-04T07:30Z`; a space may stand for the T, seconds and their
 *   fraction may be missing.
 * @returns `null` for anything else, a time without an offset or a date that does not exist among it.
 * @see ISO 8601 in the profile of IETF RFC 3339, section 5.6, from memory; the tests compare with `Date.parse`.
 *   [RFC3339] in sources.ts
 */
export function isoToSeconds(text: string): number | null {
  const found = TIME.exec(text)
  if (found === null) return null
  const [, year, month, day, hour, minute, second = '0', fraction = '', sign, offsetHour = '0', offsetMinute = '0'] =
    found
  const fields = [hour, minute, second, offsetHour, offsetMinute].map(Number)
  if (fields[0]! > 23 || fields[1]! > 59 || fields[2]! > 59 || fields[3]! > 23 || fields[4]! > 59) return null
  const days = daysSince1970(Number(year), Number(month), Number(day))
  if (days === null) return null
  const offset = (fields[3]! * 3600 + fields[4]! * 60) * (sign === '-' ? -1 : 1)
  const whole = days * 86_400 + fields[0]! * 3600 + fields[1]! * 60 + fields[2]! - offset
  return whole + (fraction === '' ? 0 : Number(`0${fraction.replace(',', '.')}`))
}

/**
 * The same backward, in UTC with a Z, with the shortest fraction that gives the same number again; at most nine digits,
 * which is finer than a double is from the year 1971 on.
 */
export function secondsToIso(seconds: number): string {
  const whole = Math.floor(seconds)
  const { year, month, day } = dateOf(Math.floor(whole / 86_400))
  const second = whole - Math.floor(whole / 86_400) * 86_400
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
  const clock = `${two(second / 3600)}:${two((second % 3600) / 60)}:${two(second % 60)}`
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}T${clock}${fractionOf(seconds, whole)}Z`
}

const TIME = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)([.,]\d{1,20})?)?(?:Z|([+-])(\d\d)(?::?(\d\d))?)$/i

function fractionOf(seconds: number, whole: number): string {
  for (let digits = 0; digits < 9; digits++) {
    const text = (seconds - whole).toFixed(digits)
    if (text.startsWith('0') && whole + Number(text) === seconds) return text.slice(1)
  }
  return Math.min(seconds - whole, 0.999999999)
    .toFixed(9)
    .slice(1)
}

// Civil date <-> day number in the proleptic Gregorian calendar, years counted from March so that leap days come last.

function daysSince1970(year: number, month: number, day: number): number | null {
  const shifted = month <= 2 ? year - 1 : year
  const era = Math.floor(shifted / 400)
  const yearOfEra = shifted - era * 400
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear
  const days = era * 146_097 + dayOfEra - 719_468
  const back = dateOf(days)
  return month >= 1 && month <= 12 && day >= 1 && back.month === month && back.day === day ? days : null
}

function dateOf(days: number): { readonly year: number; readonly month: number; readonly day: number } {
  const z = days + 719_468
  const era = Math.floor(z / 146_097)
  const dayOfEra = z - era * 146_097
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const march = Math.floor((5 * dayOfYear + 2) / 153)
  const month = march < 10 ? march + 3 : march - 9
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * march + 2) / 5) + 1,
  }
}
