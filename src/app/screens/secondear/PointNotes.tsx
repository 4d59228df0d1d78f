import { useState } from 'react'
import { MOST_COMMENTS, MOST_OPINION_TEXT, type OpinionComment } from '../../../../shared/job/opinions'
import type { BlindPoint } from '../../../../shared/opinion/blindPoints'
import { formatNumber } from '../../../../shared/words/formatQuantity'
import type { Listening } from '../../ears/listening'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { Switch } from '../../look/widgets/Switch'
import { TextField } from '../../look/widgets/TextField'
import type { PanelClip } from '../../sounds/panelClips'
import type { EarsProps } from './earsProps'
import { useReview } from './useReview'

interface PointNotesProps extends EarsProps {
  readonly point: BlindPoint
  readonly clip: PanelClip
  readonly listening: Listening<PanelClip>
}

/** Remarks on the chosen clip, at a moment of it, and whether one would record here again. */
export function PointNotes({ job, line, point, clip, listening }: PointNotesProps) {
  const { say } = useSay()
  const { review, draft } = useReview(job.id, line.id)
  const [text, setText] = useState('')
  const { comments, again } = review.draft
  const asked = again.find((each) => each.point === point.point)
  const { sha256 } = clip
  const own = comments.filter((comment) => comment.clip === sha256)
  const others = again.filter((each) => each.point !== point.point)
  const add = () => {
    if (sha256 === null || text.trim() === '') return
    const comment: OpinionComment = { clip: sha256, atS: listening.positionS(), text: text.trim() }
    draft({ comments: [...comments, comment].slice(0, MOST_COMMENTS) })
    setText('')
  }
  return (
    <section className="point-part stack" aria-label={say('heading_remarks')}>
      <h3>{say('heading_remarks')}</h3>
      <TextField label={say('label_remark')} value={text} mostLength={MOST_OPINION_TEXT} onChange={setText} />
      <Button icon={<Icon name="add" />} disabled={text.trim() === ''} onClick={add}>
        {say('do_remark')}
      </Button>
      {own.map((comment) => (
        <div key={`${comment.atS} ${comment.text}`} className="hear-remark">
          <p>{say('label_remark_at', { at: formatNumber(comment.atS ?? 0, 1), note: comment.text })}</p>
          <Button
            kind="bare"
            iconOnly
            icon={<Icon name="remove" />}
            onClick={() => draft({ comments: comments.filter((each) => each !== comment) })}
          >
            {say('do_drop_remark')}
          </Button>
        </div>
      ))}
      <Switch
        words={say('label_again_here')}
        on={asked !== undefined}
        onChange={(on) => draft({ again: on ? [...others, { point: point.point, note: '' }] : others })}
      />
      {asked !== undefined && (
        <TextField
          label={say('label_again_why')}
          value={asked.note}
          mostLength={MOST_OPINION_TEXT}
          onChange={(note) => draft({ again: [...others, { point: point.point, note }] })}
        />
      )}
    </section>
  )
}
