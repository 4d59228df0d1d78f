import type { Wording } from './wording'

/** Work without a signal: the copy on the device, newer versions, the home screen, pages that were not opened securely. */
export const OFFLINE_WORDS = {
  heading_offline: { text: 'Without a signal' },
  offline_keeping: { text: 'A copy of this page is being kept on this device.' },
  offline_kept: { text: 'This page and all it needs are kept on this device: it starts and works without a signal.' },
  offline_not_known: {
    text: 'This browser keeps no copies of pages: without a signal this page does not start again.',
    mend: 'Use a browser of the Chromium family in a normal window.',
  },
  offline_not_fetched: {
    text: 'The copy for work without a signal is not complete yet: {file} did not come.',
    mend: 'Stay connected and try again; what is here already is not fetched twice.',
  },
  offline_other_content: {
    text: 'The copy for work without a signal is not complete: something else came in place of {file}.',
    mend: 'Sign in to the network if it asks for that, or load the page again, and try again.',
  },
  offline_full: {
    text: 'There is no room on this device for the copy that works without a signal.',
    mend: 'Make room on the device and try again. The jobs are not touched.',
  },
  offline_refused: {
    text: 'The browser keeps no copy: it does not trust this connection, or there is none.',
    mend: 'Open the page from a server whose certificate the phone knows, and try again.',
  },
  newer_ready: {
    text: 'A newer version is ready. Jobs and clips stay as they are.',
  },
  newer_taken: {
    text: 'A newer version was taken in another tab.',
    mend: 'Load the page again before you go on here.',
  },
  do_take_newer: { text: 'Take it now' },
  do_later: { text: 'Later' },
  home_screen_how: {
    text: 'Put it on the home screen, so that it opens like any app: the menu of the browser has that, too.',
  },
  do_home_screen: { text: 'Put it on the home screen' },
  page_not_secure: {
    text: 'This page was not opened securely (https): the browser lends it no microphone and keeps no copy for work without a signal.',
    mend: 'Clips of a recorder can be opened here. To record, open the page by an https address.',
  },
} as const satisfies Record<string, Wording>
