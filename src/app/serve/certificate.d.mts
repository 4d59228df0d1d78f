export function certificate(names: readonly string[], nowMs?: number): { key: string; cert: string }
