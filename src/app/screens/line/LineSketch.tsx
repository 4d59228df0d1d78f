import { useCallback, useMemo } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import { lineSketch } from '../../../../shared/sketch/lineSketch'
import { sketchPoints } from '../../../../shared/sketch/sketchPoint'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import { SketchStill } from '../../sketch/SketchStill'

/** The line as it is told so far: a wrong turn is seen at once. */
export function LineSketch({ jobLine: { line, sweeps } }: { readonly jobLine: JobLine }) {
  const { say } = useSay()
  const points = useMemo(
    () =>
      sketchPoints(
        sweeps.flatMap(({ clips }) => clips.map(({ row }) => row)),
        null,
      ),
    [sweeps],
  )
  const draw = useCallback(
    (pxPerM: number) => lineSketch({ line, points, answer: null, chosenPoint: null, isConfirmed: false, pxPerM }),
    [line, points],
  )
  if (draw(Number.POSITIVE_INFINITY).length === 0) return null
  return (
    <Panel heading={say('label_sketch')} headingUnseen>
      <SketchStill draw={draw} />
    </Panel>
  )
}
