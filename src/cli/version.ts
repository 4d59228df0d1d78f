declare const YARDHARK_VERSION: string

/** Version of the program; the build puts in what package.json says. */
export const VERSION = YARDHARK_VERSION
