import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { sentence, wordsOf } from '../../shared/words/sentence'
import { Page } from './frame/Page'
import { AppContext } from './frame/useApp'
import './look/tokens.css'
import './look/base.css'
import { startApp } from './startApp'
import { isNewer } from './storage/database'

const place = document.getElementById('app')!

try {
  const app = await startApp()
  createRoot(place).render(
    <StrictMode>
      <AppContext value={app}>
        <Page />
      </AppContext>
    </StrictMode>,
  )
  // The page itself comes first; what is kept for later comes after it.
  if (import.meta.env.PROD) void app.offlineKeeper.start()
} catch (error) {
  const key = isNewer(error) ? 'page_kept_by_newer' : error instanceof DOMException ? 'page_no_storage' : 'page_fault'
  const { text, mend } = wordsOf({ key, values: { why: error instanceof Error ? error.message : String(error) } })
  createRoot(place).render(
    <main className="page-dead">
      <h1>{sentence('label_app', {})}</h1>
      <p role="alert">
        {text} {mend}
      </p>
    </main>,
  )
}
