/** Files as they came from a picker, a drop, a zip or the demo. */
export interface Source {
  /** Of the folder or zip; for messages, and for the name of the job. */
  readonly name: string
  readonly files: readonly SourceFile[]
}

export interface SourceFile {
  /** With forward slashes, the folder's own name left off. */
  readonly path: string
  readonly bytes: Blob
}
