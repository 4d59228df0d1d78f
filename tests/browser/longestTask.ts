import type { Browser, Page } from 'playwright-core'

/** The longest task of the page's main thread during something. */
export interface LongestTask {
  /** By the clock on the wall, ms: on a busy machine, others' work too. */
  readonly wallMs: number
  /** By the thread's own clock, ms: what the page itself took. */
  readonly ownMs: number
}

interface TraceEvent {
  readonly name: string
  readonly ph: string
  readonly pid: number
  readonly tid: number
  /** Microseconds, on the wall and on the thread's own clock. */
  readonly dur?: number
  readonly tdur?: number
  readonly args?: { readonly name?: string }
}

/** Does something, and measures the tasks of the page's main thread meanwhile. */
export async function longestTask(browser: Browser, page: Page, act: () => Promise<void>): Promise<LongestTask> {
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', '__metadata'] })
  let trace: Buffer
  try {
    await act()
  } finally {
    trace = await browser.stopTracing()
  }
  const { traceEvents } = JSON.parse(trace.toString('utf8')) as { readonly traceEvents: readonly TraceEvent[] }
  const main = new Set(
    traceEvents.flatMap(({ name, args, pid, tid }) =>
      name === 'thread_name' && args?.name === 'CrRendererMain' ? [`${pid}/${tid}`] : [],
    ),
  )
  const tasks = traceEvents.filter(({ name, pid, tid }) => name.endsWith('RunTask') && main.has(`${pid}/${tid}`))
  if (tasks.length === 0) throw new Error('the trace holds no task of the main thread')
  const most = (of: (task: TraceEvent) => number | undefined) =>
    tasks.reduce((longest, task) => Math.max(longest, of(task) ?? 0), 0) / 1000
  return { wallMs: most(({ dur }) => dur), ownMs: most(({ tdur }) => tdur) }
}
