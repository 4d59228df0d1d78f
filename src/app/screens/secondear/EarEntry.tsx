import { useMemo } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import type { Opinion } from '../../../../shared/job/opinions'
import { deviceName } from '../../../../shared/opinion/signedOpinion'
import { formatNumber } from '../../../../shared/words/formatQuantity'
import type { Keyed } from '../../../../shared/words/sentence'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import type { Ears } from './useEars'

interface EarEntryProps {
  readonly opinion: Opinion
  /** On the sketch; `null` where it is not on it. */
  readonly letter: string | null
  readonly line: JobLine
  readonly ears: Ears
}

/** One opinion: who, where, how sure, what had been seen before, and whether it is what its device signed. */
export function EarEntry({ opinion, letter, line, ears }: EarEntryProps) {
  const { say } = useSay()
  const { reviewer, says, alongM, windowM, confidence, again, note, seen, timeS, comments } = opinion
  const name = reviewer.trim() === '' ? say('label_nameless') : reviewer
  return (
    <li className="ears-entry">
      <h3>
        {letter !== null && <span className="ears-letter">{letter}</span>} <bdi>{name}</bdi>
      </h3>
      <p>
        {says === 'here' && alongM !== null && windowM !== null && confidence !== null
          ? say('ears_place', { along_m: alongM, from_m: windowM[0], to_m: windowM[1], probability: confidence })
          : say(says === 'record again' ? 'ears_again' : 'ears_not_heard')}
      </p>
      {again.length > 0 && (
        <ul className="stack-small">
          {again.map((each) => (
            <li key={each.point}>
              {each.note === ''
                ? say('ears_again_at', { point: each.point })
                : say('ears_again_at_why', { point: each.point, note: each.note })}
            </li>
          ))}
        </ul>
      )}
      {note !== '' && (
        <p>
          <bdi>{note}</bdi>
        </p>
      )}
      <p className="soft">
        {[
          say('ears_when', {
            when: new Date(timeS * 1000).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' }),
          }),
          say(seenKey(opinion)),
          seen.shuffled ? say('ears_shuffled') : '',
          say('ears_heard_clips', { count: seen.heard.length }),
        ]
          .filter((words) => words !== '')
          .join(' ')}
      </p>
      <Device opinion={opinion} ears={ears} />
      {comments.length > 0 && (
        <Disclosure summary={say('label_remarks_count', { count: comments.length })}>
          {() => <Remarks opinion={opinion} line={line} />}
        </Disclosure>
      )}
    </li>
  )
}

function seenKey({ seen }: Opinion) {
  if (!seen.answer && !seen.opinions) return 'ears_blind'
  if (seen.answer && seen.opinions) return 'ears_saw_both'
  return seen.answer ? 'ears_saw_answer' : 'ears_saw_opinions'
}

function Device({ opinion, ears: { signed, ownKey, known, name } }: Pick<EarEntryProps, 'opinion' | 'ears'>) {
  const { say, sayKeyed } = useSay()
  const { deviceKey, reviewer } = opinion
  const state = signed[opinion.id]
  if (state === undefined) return <p className="soft">{say('ears_checking')}</p>
  if (state === 'unsigned' || deviceKey === null) return <p className="soft">{say('ears_unsigned')}</p>
  const device = deviceName(deviceKey)
  if (state === 'changed') return <p className="ears-changed">{say('ears_changed', { device })}</p>
  const knownAs = known[deviceKey]
  const isNew = deviceKey !== ownKey && knownAs === undefined
  return (
    <div className="row">
      <p className="soft">{sayKeyed(deviceWords(deviceKey === ownKey, knownAs, device))}</p>
      {isNew && reviewer.trim() !== '' && (
        <Button kind="bare" onClick={() => name(deviceKey, reviewer.trim())}>
          {say('do_know_device', { name: reviewer.trim() })}
        </Button>
      )}
      {knownAs !== undefined && deviceKey !== ownKey && (
        <Button kind="bare" onClick={() => name(deviceKey, '')}>
          {say('do_unknow_device')}
        </Button>
      )}
    </div>
  )
}

function deviceWords(isOwn: boolean, knownAs: string | undefined, device: string): Keyed {
  if (isOwn) return { key: 'ears_own_device', values: { device } }
  if (knownAs !== undefined) return { key: 'ears_known_device', values: { device, name: knownAs } }
  return { key: 'ears_unknown_device', values: { device } }
}

function Remarks({ opinion, line }: Pick<EarEntryProps, 'opinion' | 'line'>) {
  const { say } = useSay()
  const files = useMemo(
    () =>
      new Map(
        line.sweeps.flatMap(({ clips }) => clips.map(({ sound, row }) => [sound?.sha256 ?? '', row.file] as const)),
      ),
    [line.sweeps],
  )
  return (
    <ul className="stack-small">
      {opinion.comments.map(({ clip, atS, text }) => {
        const file = files.get(clip) ?? say('label_clip_gone')
        return (
          <li key={`${clip} ${atS} ${text}`}>
            {atS === null
              ? say('ears_remark', { file, note: text })
              : say('ears_remark_at', { file, at: formatNumber(atS, 1), note: text })}
          </li>
        )
      })}
    </ul>
  )
}
