/**
 * Date and time of day in UTC.
 *
 * @param timeS Seconds since 1970-01-01 UTC.
 * @returns `yyyy-mm-dd` and `hh:mm:ss`; `null` outside the years 0 to 9999.
 */
export function utcTimes(timeS: number): { readonly date: string; readonly time: string } | null {
  const when = new Date(Math.floor(timeS) * 1000)
  const year = when.getUTCFullYear()
  if (!(year >= 0 && year <= 9999)) return null
  const iso = when.toISOString()
  return { date: iso.slice(0, 10), time: iso.slice(11, 19) }
}
