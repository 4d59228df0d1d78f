/** Lets whatever else waits for the main thread go first. */
export function nextTask(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve))
}
