export function serveToLan(
  folder: string,
  ports: { firstPort: number; tries: number },
): Promise<{ urls: string[]; cert: string; close: () => Promise<void> }>
