import type { ReactNode } from 'react'
import './Table.css'

export interface TableProps {
  readonly caption: string
  readonly captionUnseen?: boolean
  /** `number` columns stand to the right. */
  readonly columns: readonly { readonly heading: string; readonly align?: 'text' | 'number' }[]
  readonly rows: readonly { readonly key: string; readonly cells: readonly ReactNode[] }[]
}

/** Figures in rows; wide ones scroll in their own frame. The first cell of a row names it. */
export function Table({ caption, captionUnseen = false, columns, rows }: TableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard
    <section className="table-frame" tabIndex={0} aria-label={caption}>
      <table className="table">
        <caption className={captionUnseen ? 'unseen' : 'table-caption'}>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ heading, align = 'text' }) => (
              <th key={heading} scope="col" className={`table-${align}`}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells }) => (
            <tr key={key}>
              {columns.map(({ heading, align = 'text' }, i) =>
                i === 0 ? (
                  <th key={heading} scope="row" className={`table-${align}`}>
                    {cells[i]}
                  </th>
                ) : (
                  <td key={heading} className={`table-${align}`}>
                    {cells[i]}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
