export function staticServer(
  folder: string,
  ports: { firstPort: number; tries: number },
): Promise<{ url: string; close: () => Promise<void> }>
