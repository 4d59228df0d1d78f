/** Day and time as this device writes them. */
export function dayOf(timeS: number): string {
  return new Date(timeS * 1000).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })
}
