import './Peg.css'

export interface PegProps {
  readonly point: number
  /** `best`: ranked first. `silent`: none of its clips could be used. */
  readonly state?: 'plain' | 'best' | 'silent'
}

/** A point: a rounded square with its number, as it stands in the ground and on the sketch. */
export function Peg({ point, state = 'plain' }: PegProps) {
  return <span className={`peg peg-${state}`}>{point}</span>
}
