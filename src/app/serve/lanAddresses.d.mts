import type { NetworkInterfaceInfo } from 'node:os'

export function lanAddresses(interfaces?: Record<string, NetworkInterfaceInfo[] | undefined>): string[]
