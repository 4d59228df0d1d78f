import { existsSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import type { AnswerJson } from '../../shared/answer/answerJson'
import { staticServer } from '../../src/app/serve/staticServer.mjs'
import { chromiumPath } from '../support/chromiumPath.mjs'

export const root = resolve(import.meta.dirname, '../..')

/** How long a machine that does much else is waited for, ms: no test is about time. */
export const PATIENT_MS = 60_000

/** A phone held in one hand, and a desk. */
export const SCREENS = {
  phone: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
  tablet: { viewport: { width: 768, height: 1024 }, hasTouch: true, isMobile: true },
  desk: { viewport: { width: 1440, height: 900 } },
} satisfies Record<string, BrowserContextOptions>
export type ScreenSize = keyof typeof SCREENS

/** For a browser that runs as root on a machine without a screen, and calls nobody. */
export const BROWSER_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** The built page on a server of its own, and a browser for it. */
export interface Yard {
  readonly url: string
  readonly browser: Browser
  /** A fresh profile of this size with one page. */
  readonly open: (
    size: ScreenSize,
    options?: BrowserContextOptions,
    /** Before the page is opened. */
    prepare?: (context: BrowserContext) => Promise<void>,
  ) => Promise<YardPage>
  /** As when the host is gone; the browser stays. */
  readonly stopServing: () => Promise<void>
  readonly close: () => Promise<void>
}

/** A page, and everything on it that went wrong so far. */
export interface YardPage {
  readonly page: Page
  readonly context: BrowserContext
  /** Errors on the console, faults, requests to elsewhere. */
  readonly troubles: readonly string[]
  readonly close: () => Promise<void>
}

/**
 * Serves dist/app and starts a browser.
 *
 * @param extraArgs For the browser, as a file that stands for the microphone.
 * @param served What is served when it is not the build at the root: `under` is the path of the page, without a leading slash;
 *   `env` is for the browser, beside what is set already.
 * @throws when the page was not built, or no Chromium is there.
 */
export async function openYard(
  extraArgs: readonly string[] = [],
  served: { folder?: string; under?: string; env?: Readonly<Record<string, string>> } = {},
): Promise<Yard> {
  const { folder = BUILT, under = '', env = {} } = served
  if (!existsSync(resolve(folder, under, 'index.html')))
    throw new Error('dist/app is not there: run npm run build first')
  const executablePath = chromiumPath()
  if (executablePath === null) throw new Error('no Chromium: run node tests/support/ensureChromium.mjs first')
  const server = await staticServer(folder, { firstPort: 0, tries: 1 })
  const url = `${server.url}${under}`
  const browser = await chromium.launch({
    executablePath,
    args: [...BROWSER_ARGS, ...extraArgs],
    env: { ...process.env, ...env } as Record<string, string>,
  })
  return {
    url,
    browser,
    open: (size, options = {}, prepare) => openPage(browser, url, { ...SCREENS[size], ...options }, prepare),
    stopServing: () => server.close(),
    close: async () => {
      await browser.close()
      await server.close()
    },
  }
}

const BUILT = resolve(root, 'dist/app')

/** What a page does not get here unless a test is about it: a second copy of everything, fetched beside each test. */
function withoutServiceWorker(): void {
  Reflect.deleteProperty(Navigator.prototype, 'serviceWorker')
}

async function openPage(
  browser: Browser,
  url: string,
  { serviceWorkers, ...options }: BrowserContextOptions,
  prepare?: (context: BrowserContext) => Promise<void>,
): Promise<YardPage> {
  const context = await browser.newContext({ locale: 'en-GB', timezoneId: 'UTC', ...options })
  if (serviceWorkers !== 'allow') await context.addInitScript(withoutServiceWorker)
  await prepare?.(context)
  const troubles: string[] = []
  context.on('page', (page) => watch(page, url, troubles))
  const page = await context.newPage()
  await page.goto(url)
  return { page, context, troubles, close: () => context.close() }
}

function watch(page: Page, url: string, troubles: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') troubles.push(`console: ${message.text()}`)
  })
  page.on('pageerror', (error) => troubles.push(`fault: ${error.stack ?? error.message}`))
  page.on('request', (request) => {
    if (!request.url().startsWith(url) && !/^(?:blob|data):/.test(request.url())) {
      troubles.push(`request to elsewhere: ${request.url()}`)
    }
  })
}

/** What of a page is checked, and for what: checking takes its time. */
interface AxeScope {
  /** A selector; the whole page unless told. */
  readonly within?: string
  /** All that another look can change. */
  readonly onlyContrast?: boolean
}

/** What an accessibility checker finds, one line a finding: rule, element, what to do. */
export async function axeFindings(page: Page, { within, onlyContrast }: AxeScope = {}): Promise<string[]> {
  // A colour that is still on its way to another is neither of them.
  await page.evaluate(async () => {
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)))
    await Promise.allSettled(document.getAnimations().map((animation) => animation.finished))
  })
  // The page has no frames: checking it as one document takes a third of the time.
  const builder = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode()
  if (within !== undefined) builder.include(within)
  if (onlyContrast) builder.withRules(['color-contrast'])
  else builder.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
  const { violations } = await builder.analyze()
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')}: ${node.failureSummary?.replaceAll(/\s+/g, ' ')}`),
  )
}

/** Opens the invented job and waits for its answer. */
export async function openDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Look at the invented job' }).click()
  await page.getByRole('heading', { name: /^(?:Located|Unsure|No leak heard)$/ }).waitFor({ timeout: 2 * PATIENT_MS })
}

/** Goes to a screen by the bar. */
export async function goToScreen(page: Page, name: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name }).click()
}

/** The answer as the page saves it. */
export async function savedAnswer(page: Page): Promise<AnswerJson> {
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save the answer as JSON' }).click()
  return JSON.parse(readFileSync(await (await download).path(), 'utf8')) as AnswerJson
}
