import { countedAnswers } from '../../../../shared/practice/answers'
import { DRILLS } from '../../../../shared/practice/drills/question'
import { waitingAgain } from '../../../../shared/practice/nextOrder'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { DRILL_WORDS } from './drillWords'
import type { Practice } from './usePractice'

/** The drills, what each asks, and how often it was done. */
export function DrillsPart({ practice }: { readonly practice: Practice }) {
  const { say } = useSay()
  return (
    <Panel heading={say('heading_drills')}>
      <p>{say('practice_invented')}</p>
      <p className="listen-caution">{say('practice_phones')}</p>
      <ul className="practice-drills">
        {DRILLS.map((drill) => {
          const [name, about] = DRILL_WORDS[drill]
          const count = countedAnswers(practice.answers, drill).length
          const waiting = waitingAgain(practice.answers, drill)
          return (
            <li key={drill} className="practice-drill">
              <h3>{say(name)}</h3>
              <p>{say(about)}</p>
              {count > 0 && (
                <p className="soft">
                  {say('label_answers_so_far', { count })}
                  {waiting > 0 && ` · ${say('label_missed_waiting', { count: waiting })}`}
                </p>
              )}
              <Button onClick={() => practice.start(drill)}>{say('do_start_round', { drill: say(name) })}</Button>
            </li>
          )
        })}
      </ul>
    </Panel>
  )
}
