/** Why a path was refused, as the mend of a message. */
export interface RefusedPath {
  readonly ok: false
  readonly mend: string
}

/**
 * A path out of a sheet, when it is relative and stays in its folder.
 *
 * @param told As written, with forward slashes.
 * @returns The path without `./`; or what is wrong with it.
 */
export function safePath(told: string): { readonly ok: true; readonly path: string } | RefusedPath {
  const refuse = (mend: string): RefusedPath => ({ ok: false, mend })
  if (told === '') return refuse('is empty; write the name of the clip')
  if (told.length > 1000) return refuse(`is ${told.length} characters long; at most 1000 are read`)
  if (/\p{Cc}/u.test(told)) return refuse('holds a control character; write the plain name of the clip')
  if (told.includes('\\')) return refuse('holds a backslash; write forward slashes, like clips/06-on.wav')
  if (told.startsWith('/') || /^[a-z]:/i.test(told)) return refuse('is an absolute path; write it from the folder on')
  const steps = told.split('/').filter((step) => step !== '.')
  if (steps.includes('..')) return refuse('leaves the folder with ".."; put the clip into the folder')
  if (steps.length === 0 || steps.includes('')) return refuse('is no name of a file; write one like clips/06-on.wav')
  if (steps.some((step) => step.length > 255)) return refuse('holds a name of more than 255 characters; shorten it')
  return { ok: true, path: steps.join('/') }
}
