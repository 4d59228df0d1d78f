import { useRef, useState } from 'react'
import { mayBeShared } from '../../../../shared/practice/library/libraryClip'
import { misleading } from '../../../../shared/practice/set/misleading'
import { SET_LIMITS, type SetDrill } from '../../../../shared/practice/set/practiceSet'
import { type SetScores, writeScores } from '../../../../shared/practice/set/scoresFile'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Choice } from '../../look/widgets/Choice'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Icon } from '../../look/widgets/Icon'
import { Notice } from '../../look/widgets/Notice'
import { Panel } from '../../look/widgets/Panel'
import { Progress } from '../../look/widgets/Progress'
import { Switch } from '../../look/widgets/Switch'
import { Table } from '../../look/widgets/Table'
import { TextField } from '../../look/widgets/TextField'
import { newId } from '../../newId'
import { isJobBlind } from '../../review/reviews'
import { saveFile } from '../../saveFile'
import { answerEntry, DRILL_WORDS } from './drillWords'
import { gatherFromFolder, gatherFromJobs, gatherFromYard } from './gatherSet'
import type { OpenedSet, Sets } from './useSets'

interface SetsPartProps {
  readonly sets: Sets
  readonly onPractise: (id: string) => void
}

/** Sets of clips: made, handed on, answered, and what came back. */
export function SetsPart({ sets, onPractise }: SetsPartProps) {
  const { say, sayKeyed } = useSay()
  return (
    <Panel heading={say('heading_sets')}>
      <p>{say('practice_sets_why')}</p>
      {sets.said !== null && (
        <Notice severity={sets.said.severity}>
          <p>{sayKeyed(sets.said.words)}</p>
          {sets.said.more.length > 0 && (
            <ul className="stack-small">
              {sets.said.more.map((words) => (
                <li key={JSON.stringify(words)}>{sayKeyed(words)}</li>
              ))}
            </ul>
          )}
        </Notice>
      )}
      {sets.broken.map(({ kept: { id, name, zip }, why }) => (
        <Notice
          key={id}
          severity="wrong"
          actions={
            <>
              <Button icon={<Icon name="save" />} onClick={() => saveFile('set.zip', zip, 'application/zip')}>
                {say('do_save_set', { name })}
              </Button>
              <Button icon={<Icon name="remove" />} onClick={() => sets.drop(id)}>
                {say('do_drop_set', { name })}
              </Button>
            </>
          }
        >
          <p>{say('practice_set_broken', { name, why })}</p>
        </Notice>
      ))}
      {sets.working && <Progress words={say('label_making_set')} done={0} total={0} />}
      {sets.sets.map((opened) => (
        <SetPart key={opened.set.id} opened={opened} sets={sets} onPractise={onPractise} />
      ))}
      <OpenSetButtons sets={sets} />
      <Disclosure summary={say('heading_make_set')}>{() => <MakeSet sets={sets} />}</Disclosure>
    </Panel>
  )
}

function SetPart({ opened, sets, onPractise }: SetsPartProps & { readonly opened: OpenedSet }) {
  const { say } = useSay()
  const [by, setBy] = useState('')
  const { kept, set } = opened
  const { id, name, clips } = set
  const invented = clips.filter((clip) => clip.invented).length
  const isShareable = clips.every(mayBeShared)
  const answered = kept.answers.length >= clips.length
  const plainName = name.replace(/[^\w-]+/g, '-').replace(/^-|-$/g, '') || 'set'
  const scores: SetScores = {
    setId: id,
    by: by.trim(),
    answers: kept.answers.map(({ clip, said }) => ({ clip, said })),
  }
  return (
    <section className="practice-set stack-small" aria-label={name}>
      <h3>{name}</h3>
      <p>{say('label_set_about', { count: clips.length, drill: say(DRILL_WORDS[set.drill][0]) })}</p>
      <p className="soft">{say('set_origin', { invented, real: clips.length - invented })}</p>
      {!isShareable && <p>{say('practice_not_shared')}</p>}
      <div className="row">
        <Button onClick={() => onPractise(id)}>{say(answered ? 'do_see_set' : 'do_practise_set', { name })}</Button>
        <Button
          icon={<Icon name="save" />}
          disabled={!isShareable}
          onClick={() => saveFile(`${plainName}.zip`, kept.zip, 'application/zip')}
        >
          {say('do_save_set', { name })}
        </Button>
        <Button kind="bare" icon={<Icon name="remove" />} onClick={() => sets.drop(id)}>
          {say('do_drop_set', { name })}
        </Button>
      </div>
      {kept.answers.length > 0 && (
        <>
          <TextField label={say('label_set_by')} value={by} mostLength={SET_LIMITS.name} onChange={setBy} />
          <Button
            icon={<Icon name="save" />}
            onClick={() => saveFile(`${plainName}-scores.json`, writeScores(scores), 'application/json')}
          >
            {say('do_save_scores', { name })}
          </Button>
        </>
      )}
      {kept.scores.length > 0 && <MisleadingTable opened={opened} />}
    </section>
  )
}

/** Which clips mislead most, of all scores that came back. */
function MisleadingTable({ opened: { kept, set } }: { readonly opened: OpenedSet }) {
  const { say } = useSay()
  const label = (said: string) => {
    const entry = answerEntry(set.drill, said)
    return entry === null ? said : say(entry[0])
  }
  return (
    <>
      <p>{say('practice_scores_from', { count: kept.scores.length })}</p>
      <Table
        caption={say('heading_misleading', { name: set.name })}
        columns={[
          { heading: say('label_set_clip') },
          { heading: say('label_set_wrong') },
          { heading: say('label_set_taken') },
        ]}
        rows={misleading(set, kept.scores).map(({ clip, answers, wrong, wrongShare, takenFor }) => ({
          key: String(clip),
          cells: [
            `${set.clips[clip]!.file}: ${label(set.clips[clip]!.label)}`,
            say('label_wrong_of', {
              wrong,
              count: answers,
              share: wrongShare.share,
              low_share: wrongShare.low,
              high_share: wrongShare.high,
            }),
            takenFor === null ? '' : label(takenFor),
          ],
        }))}
      />
    </>
  )
}

function OpenSetButtons({ sets }: { readonly sets: Sets }) {
  const { say } = useSay()
  const file = useRef<HTMLInputElement>(null)
  const folder = useRef<HTMLInputElement>(null)
  return (
    <div className="row">
      <Button icon={<Icon name="open" />} onClick={() => file.current?.click()}>
        {say('do_open_set')}
      </Button>
      <Button icon={<Icon name="open" />} onClick={() => folder.current?.click()}>
        {say('do_open_labels')}
      </Button>
      <input
        ref={file}
        type="file"
        hidden
        data-picker="set"
        accept=".zip,.json"
        onChange={({ target }) => {
          const picked = target.files?.[0]
          target.value = ''
          if (picked) sets.open(picked)
        }}
      />
      <input
        ref={(element) => {
          folder.current = element
          if (element !== null) element.webkitdirectory = true
        }}
        type="file"
        hidden
        multiple
        data-picker="labels"
        onChange={({ target }) => {
          const picked = [...(target.files ?? [])]
          target.value = ''
          if (picked.length > 0) sets.make(() => gatherFromFolder(picked))
        }}
      />
    </div>
  )
}

function MakeSet({ sets }: { readonly sets: Sets }) {
  const { say } = useSay()
  const { analyst, database, store } = useApp()
  const [name, setName] = useState('')
  const [from, setFrom] = useState<'yard' | 'jobs'>('yard')
  const [drill, setDrill] = useState<SetDrill>('leak')
  const [licence, setLicence] = useState('')
  const [consent, setConsent] = useState(false)
  const make = () =>
    sets.make(() =>
      from === 'yard'
        ? gatherFromYard(analyst, name.trim(), drill, newId())
        : gatherFromJobs(database, name.trim(), { consent, licence }, (jobId) => isJobBlind(store.get(), jobId)),
    )
  return (
    <div className="stack">
      <TextField label={say('label_set_name')} value={name} mostLength={SET_LIMITS.name} onChange={setName} />
      <Choice
        label={say('label_set_from')}
        value={from}
        options={[
          { value: 'yard', words: say('label_set_yard') },
          { value: 'jobs', words: say('label_set_jobs') },
        ]}
        onChange={setFrom}
      />
      {from === 'yard' ? (
        <Choice
          label={say('label_set_drill')}
          value={drill}
          options={[
            { value: 'leak', words: say('label_drill_leak') },
            { value: 'what', words: say('label_drill_what') },
          ]}
          onChange={setDrill}
        />
      ) : (
        <>
          <TextField
            label={say('label_set_licence')}
            value={licence}
            mostLength={SET_LIMITS.name}
            onChange={setLicence}
          />
          <Switch words={say('label_set_consent')} on={consent} onChange={setConsent} />
        </>
      )}
      <Button disabled={name.trim() === '' || sets.working} onClick={make}>
        {say('do_make_set')}
      </Button>
    </div>
  )
}
