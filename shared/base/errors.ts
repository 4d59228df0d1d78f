/** The caller erred: a wrong length, a negative rate. The message shows the value. */
export class InputError extends Error {
  override readonly name = 'InputError'
}

/**
 * A file is wrong. The message is one line that names the file, the place in it and the mend, ready to be shown.
 */
export class FormatError extends Error {
  override readonly name = 'FormatError'

  /** @param place Where in the file: `row 7`, `byte 36`, `stretches[2].cover`; empty for the file as a whole. */
  constructor(
    readonly file: string,
    readonly place: string,
    readonly mend: string,
  ) {
    super(`${file}${place === '' ? '' : `, ${place}`}: ${mend}`)
  }
}
