/** How much room the browser still gives this page, bytes; `null` where it does not say. */
export async function freeBytes(): Promise<number | null> {
  try {
    const { quota, usage } = await navigator.storage.estimate()
    return quota === undefined || usage === undefined ? null : Math.max(0, quota - usage)
  } catch {
    return null
  }
}

/** Asks the browser not to clear away what is kept. @returns Whether it promised. */
export async function askToPersist(): Promise<boolean> {
  try {
    return (await navigator.storage.persisted()) || (await navigator.storage.persist())
  } catch {
    return false
  }
}
