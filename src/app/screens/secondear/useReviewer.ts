import { useEffect, useState } from 'react'
import { useApp } from '../../frame/useApp'
import { keepReviewer, loadReviewer } from '../../storage/ears'

/** What whoever listens here is called; kept for the next opinion. */
export function useReviewer(): {
  readonly name: string
  readonly setName: (name: string) => void
  readonly keep: () => void
} {
  const { database } = useApp()
  const [name, setName] = useState('')
  useEffect(() => void loadReviewer(database).then(setName, () => undefined), [database])
  return { name, setName, keep: () => void keepReviewer(database, name).catch(() => undefined) } // it can be typed again
}
