/**
 * The words of one key: a sentence, or part of one, and for a problem what to do about it.
 *
 * `{name}` stands for a value; its unit comes with it (see `formatQuantity`). Plain ASCII, so that it reads on any
 * terminal. Words for the person who is out in the yard and tired: short, calm, no blame.
 */
export interface Wording {
  readonly text: string
  readonly mend?: string
}
