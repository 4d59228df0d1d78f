import { useCallback, useEffect, useState } from 'react'
import type { Opinion } from '../../../../shared/job/opinions'
import { type Signed, signatureOf } from '../../../../shared/opinion/signedOpinion'
import { useApp } from '../../frame/useApp'
import {
  type KnownDevices,
  keepKnownDevices,
  loadKnownDevices,
  ownDeviceKey,
  verifySignature,
} from '../../storage/ears'

export interface Ears {
  /** By id of the opinion; not there as long as it was not checked. */
  readonly signed: Readonly<Record<string, Signed>>
  readonly ownKey: string | null
  readonly known: KnownDevices
  /** Gives a device a name; empty: it is not known any more. */
  readonly name: (deviceKey: string, name: string) => void
}

/** Whether opinions are what their devices signed, and whose devices those are as far as somebody told it here. */
export function useEars(opinions: readonly Opinion[]): Ears {
  const { database } = useApp()
  const [signed, setSigned] = useState<Ears['signed']>({})
  const [ownKey, setOwnKey] = useState<string | null>(null)
  const [known, setKnown] = useState<KnownDevices>({})
  useEffect(() => {
    let isGone = false
    const check = async () => {
      const [own, devices] = await Promise.all([ownDeviceKey(database), loadKnownDevices(database)])
      const states = await Promise.all(
        opinions.map(async (opinion) => [opinion.id, await signatureOf(opinion, verifySignature)] as const),
      )
      if (isGone) return
      setOwnKey(own)
      setKnown(devices)
      setSigned(Object.fromEntries(states))
    }
    void check().catch(() => undefined) // they stay unchecked, and are shown so
    return () => {
      isGone = true
    }
  }, [database, opinions])
  const name = useCallback(
    (deviceKey: string, told: string) => {
      const { [deviceKey]: _, ...others } = known
      const next = told === '' ? others : { ...others, [deviceKey]: told }
      setKnown(next)
      void keepKnownDevices(database, next).catch(() => undefined) // it can be told again
    },
    [database, known],
  )
  return { signed, ownKey, known, name }
}
