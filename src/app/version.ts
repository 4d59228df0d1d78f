declare const YARDHARK_VERSION: string
declare const YARDHARK_CORE: string

/** Version of the program; the build puts in what package.json says. */
export const VERSION = YARDHARK_VERSION

/** Fingerprint of everything that a clip's evidence depends on. */
export const CORE_VERSION = YARDHARK_CORE
