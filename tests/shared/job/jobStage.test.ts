import { expect, it } from 'vitest'
import type { JobLine } from '../../../shared/job/job'
import { jobStage } from '../../../shared/job/jobStage'
import { NO_MEND } from '../../../shared/job/mend'
import { BASE_JOB } from '../../support/editedJob'

const [base] = BASE_JOB.lines
const { mend: _, found: __, ...line } = base!
const bare: JobLine = { ...line, sweeps: [], confirmations: [] }
const heard: JobLine = { ...bare, sweeps: base!.sweeps }
const said = (says: 'yes' | 'no') =>
  ({ id: says, timeS: 1, says, note: '', verdict: 'located', alongM: 1, windowM: [0, 2] }) as const

it('is that of the line which is least far', () => {
  const confirmed: JobLine = { ...heard, confirmations: [said('no'), said('yes')] }
  const found: JobLine = { ...confirmed, found: base!.found! }
  const closed: JobLine = { ...found, mend: { ...NO_MEND, closedS: 5 } }
  expect(jobStage({ lines: [] })).toBe('begun')
  expect(jobStage({ lines: [bare] })).toBe('begun')
  expect(jobStage({ lines: [heard] })).toBe('heard')
  expect(jobStage({ lines: [{ ...heard, confirmations: [said('yes'), said('no')] }] })).toBe('heard')
  expect(jobStage({ lines: [confirmed] })).toBe('confirmed')
  expect(jobStage({ lines: [found] })).toBe('found')
  expect(jobStage({ lines: [closed] })).toBe('closed')
  expect(jobStage({ lines: [closed, heard] })).toBe('heard')
})
