let format: Intl.DateTimeFormat | null = null

/** Day and time as this device writes them. */
export function dayOf(timeS: number): string {
  format ??= new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' }) // making one takes long
  return format.format(timeS * 1000)
}
