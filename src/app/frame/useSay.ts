import { useMemo } from 'react'
import { type Keyed, sentence, type WordValues, wordsOf } from '../../../shared/words/sentence'
import type { ShownUnits } from '../../../shared/words/shownUnits'
import { unbroken } from '../../../shared/words/unbroken'
import type { WordKey } from '../../../shared/words/words'
import { useAppState } from './useApp'

/** The sentence of a key, in the reader's units; a key without values takes none. */
export type Say = <Key extends WordKey>(
  key: Key,
  ...values: keyof WordValues<Key> extends never ? [] : [WordValues<Key>]
) => string

export interface Sayer {
  readonly say: Say
  /** What a reason or problem of the core says, with what to do about it behind it. */
  readonly sayKeyed: (keyed: Keyed) => string
  readonly units: ShownUnits
}

/** Words in the units of whoever reads; pressures in that of a gauge where one is told. */
export function useSay(pressure?: ShownUnits['pressure']): Sayer {
  const own = useAppState((state) => state.device.units)
  const units = useMemo(() => (pressure === undefined ? own : { ...own, pressure }), [own, pressure])
  return useMemo(
    () => ({
      say: (key, ...[values]) => unbroken(sentence(key, (values ?? {}) as WordValues<typeof key>, units)),
      sayKeyed: (keyed) => {
        const { text, mend } = wordsOf(keyed, units)
        return unbroken(mend === null ? text : `${text} ${mend}`)
      },
      units,
    }),
    [units],
  )
}
