export function staticServer(
  folder: string,
  ports: { firstPort: number; tries: number; host?: string; secure?: { key: string; cert: string } },
): Promise<{ url: string; port: number; close: () => Promise<void> }>
