import { networkInterfaces } from 'node:os'

/**
 * Addresses of this machine that others on its network can reach, IPv4 first. Addresses that hold on one wire only
 * (fe80::) are left out: no browser takes them.
 *
 * @returns {string[]}
 */
export function lanAddresses(interfaces = networkInterfaces()) {
  const all = Object.values(interfaces).flatMap((each) => each ?? [])
  const outward = all.filter(({ internal, address }) => !internal && !/^fe80:/i.test(address))
  return [...outward]
    .sort((a, b) => (a.family < b.family ? -1 : a.family > b.family ? 1 : 0))
    .map(({ address }) => address)
}
