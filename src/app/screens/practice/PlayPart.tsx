import type { Question } from '../../../../shared/practice/drills/question'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { ListenIcon } from '../../sounds/ListenIcon'
import { trackOf } from './trackOf'
import type { RoundPlayer } from './usePlayer'

interface PlayPartProps {
  readonly question: Question
  readonly player: RoundPlayer
}

/** The clips of a question, to be played as often as one likes. */
export function PlayPart({ question, player }: PlayPartProps) {
  const { say } = useSay()
  const { drill } = question.order
  return (
    <div className="stack-small">
      <div className="practice-clips">
        {question.clips.map(({ name }, i) => {
          const track = trackOf(question, i)
          const isPlaying = player.playing === track.id
          const words = clipWords(drill, name, say)
          return (
            <Button
              key={track.id}
              kind={question.clips.length === 1 ? 'main' : 'quiet'}
              icon={<ListenIcon name={isPlaying ? 'pause' : 'play'} />}
              onClick={() => player.toggle(track)}
            >
              {isPlaying ? say('do_stop_sound', { name: words }) : say('do_play_clip', { name: words })}
            </Button>
          )
        })}
      </div>
      <p className="soft">
        {say('practice_play_first')} <span className="practice-keys">{say('practice_keys')}</span>
      </p>
    </div>
  )
}

/** What a clip of a question is called. */
export function clipWords(drill: Question['order']['drill'], name: string, say: ReturnType<typeof useSay>['say']) {
  if (name === '') return say('label_the_clip')
  return drill === 'place' ? say('label_point_number', { name }) : say('label_clip_name', { name })
}
