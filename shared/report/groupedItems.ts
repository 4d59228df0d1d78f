import type { ReportItem } from './report'

/** Items as they are set: each group together, everything else by itself. */
export function groupedItems(items: readonly ReportItem[]): ReportItem[][] {
  const groups: ReportItem[][] = []
  for (const item of items) {
    const last = groups.at(-1)
    if (last !== undefined && item.group !== undefined && last[0]!.group === item.group) last.push(item)
    else groups.push([item])
  }
  return groups
}
