import { useCallback, useMemo } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import { linePath } from '../../../../shared/line/linePath'
import { type NamedOnSketch, type OpinionSketchOf, opinionSketch } from '../../../../shared/sketch/opinionSketch'
import { sketchPoints } from '../../../../shared/sketch/sketchPoint'
import { Sketch } from '../../sketch/Sketch'

interface EarsSketchProps {
  readonly line: JobLine
  readonly named: readonly NamedOnSketch[]
  readonly pooled: OpinionSketchOf['pooled']
  readonly chosenPoint: number | null
  readonly onChoose: (point: number) => void
}

/** The line from above with the places that are named on it. */
export function EarsSketch({ line, named, pooled, chosenPoint, onChoose }: EarsSketchProps) {
  const rows = useMemo(() => line.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row)), [line.sweeps])
  const points = useMemo(() => sketchPoints(rows, null), [rows])
  const path = useMemo(() => linePath(line.line), [line.line])
  const told = JSON.stringify(named)
  const draw = useCallback(
    (pxPerM: number) =>
      opinionSketch({
        line: line.line,
        points,
        named: JSON.parse(told) as NamedOnSketch[],
        pooled,
        chosenPoint,
        pxPerM,
        ...(line.site && { ends: line.site }),
      }),
    [line.line, line.site, points, told, pooled, chosenPoint],
  )
  if (draw(Number.POSITIVE_INFINITY).length === 0) return null
  return <Sketch draw={draw} closePoints={[]} path={path} chosenPoint={chosenPoint} onChoose={onChoose} />
}
