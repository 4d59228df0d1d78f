import { expect, it } from 'vitest'
import { FAMILIES } from '../../../shared/synth/families'
import { benchCall, sweepOrders } from './benchCall'

it('draws sixty sweeps of every family and two hundred without a leak when nothing is said', () => {
  const orders = sweepOrders(benchCall([]))
  for (const { name } of FAMILIES)
    expect(orders.filter(({ family }) => family === name)).toHaveLength(name === 'no leak' ? 200 : 60)
})

it('has seeds of its own, from the first one asked for', () => {
  const orders = sweepOrders(benchCall(['2', 'slab', '7']))
  expect(orders).toEqual([
    { family: 'slab', seed: 'judge-7', entry: 'drawn' },
    { family: 'slab', seed: 'judge-8', entry: 'drawn' },
  ])
})

it('goes round the families for sound, with the drawn evidence of the same yards beside it', () => {
  const orders = sweepOrders(benchCall(['--audio', '22']))
  const of = (entry: string) =>
    orders.filter((each) => each.entry === entry).map(({ family, seed }) => `${family} ${seed}`)
  expect(of('audio')).toHaveLength(22)
  expect(of('audio')).toEqual(of('drawn'))
  expect(of('audio')[21]).toBe(`${FAMILIES[1]!.name} judge-2`)
})

it.each([
  [['x'], 'sweeps per family is "x"'],
  [['0'], 'sweeps per family is "0"'],
  [['5', 'fog'], 'no family "fog"'],
  [['5', 'two', 'leaks', '3'], '"3" is one word too many'],
  [['5', 'all', '-1'], "'-1'"],
  [['--audio', 'ten'], '--audio is "ten"'],
  [['5', 'slab', '--readme'], '--readme needs every family'],
  [['--cores', '0'], '--cores is "0"'],
])('refuses %j', (words, said) => {
  expect(() => benchCall(words)).toThrow(said)
})
