import { expect, it } from 'vitest'
import { readLineJson } from '../../../shared/line/readLineJson'
import { readSweepCsv } from '../../../shared/sweep/readSweepCsv'
import { drawYard } from '../../../shared/synth/drawYard'
import { familyNamed } from '../../../shared/synth/families'
import { renderYard } from '../../../shared/synth/yardFiles'

it('a yard is written as a folder with its truth, the clips made one by one', () => {
  const yard = drawYard(familyNamed('two leaks')!, 1)
  const files = renderYard(yard, 'a job')
  const text = () => new TextDecoder().decode(files.next().value!.bytes)
  const sweep = readSweepCsv(text(), 'sweep.csv')
  expect(sweep.rows).toEqual(yard.clips.map((plan) => plan.row))
  expect(sweep.problems).toEqual([])
  expect(readLineJson(text(), 'line.json').line).toEqual(yard.told)
  const [head, ...lines] = text().trim().split('\r\n')
  expect(head).toBe('file,label,job,along_m,leak_at_m')
  for (const [i, line] of lines.entries()) {
    const [file, label, job, alongM, leakM] = line.split(',')
    const plan = yard.clips[i]!
    const nearest = Math.min(...yard.truth.leakAlongM.map((m) => Math.abs(m - plan.row.alongM)))
    expect([file, job, Number(alongM)]).toEqual([plan.row.file, 'a job', plan.row.alongM])
    expect(['leak', 'no leak', 'spoilt']).toContain(label)
    expect(Math.abs(Number(leakM) - plan.row.alongM)).toBeCloseTo(nearest, 9)
  }
  expect(files.next().value!.path).toBe(yard.clips[0]!.row.file)
})
