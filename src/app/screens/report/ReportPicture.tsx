import type { Picture } from '../../../../shared/report/picture'

/** A drawing of the report. */
export function ReportPicture({
  picture,
  kind,
}: {
  readonly picture: Picture
  readonly kind: 'curve' | 'spectrum' | 'sketch-print'
}) {
  const { widthPx, heightPx, label, shapes } = picture
  return (
    <svg
      className={`report-picture report-${kind}`}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-label={label}
    >
      {shapes.map((shape, i) =>
        shape.kind === 'path' ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: shapes have no other name, and never change places
          <path key={i} className={`look-${shape.look}`} d={shape.d} />
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: as above
          <text key={i} x={shape.x} y={shape.y} textAnchor={shape.anchor} data-light={shape.light}>
            {shape.text}
          </text>
        ),
      )}
    </svg>
  )
}
