/** The call, or a file it names, is wrong: exit status 2. The message is one line with the mend. */
export class CallError extends Error {
  override readonly name = 'CallError'
}
