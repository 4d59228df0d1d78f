/** Marks between which the README's table stands. */
const START = '<!-- place table -->'
const END = '<!-- place table ends -->'

/** The README with its table replaced; `null` when it has no marks for one. */
export function withTable(readme: string, table: string): string | null {
  const start = readme.indexOf(START)
  const end = readme.indexOf(END)
  if (start < 0 || end < start) return null
  return `${readme.slice(0, start + START.length)}\n${table}\n${readme.slice(end)}`
}

/** Beneath the table: where its figures come from and what they are no promise of. */
export function tableNotes(run: { sweeps: number; seeds: string; perFamily: number }): string {
  return [
    'Errors, the bound and windows in spacings between points, errors as median / 90th percentile, whatever the verdict; the',
    'bound is what an estimate could reach that knew the laws of the yard to the letter. A window should hold the leak in 80 %.',
    'Pooled without the families `sparse`, `shifted exit`, `two leaks` and `no leak`.',
    '',
    `Printed by \`npm run bench:place -- ${run.perFamily} --readme\`: ${run.sweeps} sweeps, seeds ${run.seeds}, evidence drawn straight from`,
    'the ground. The yard is synthetic and no recording of a real case was to be had: this is no promise about another yard.',
  ].join('\n')
}
