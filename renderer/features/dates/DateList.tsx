import { useState } from 'react';
import type { DateOfYard } from '../../../shared-core/contract/requests/dates.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { attempt, tellUndoable } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { dayOf } from '../../ui/days.ts';
import { EmptyState, Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import css from './dates.module.css';
import { detailOf, titleOf } from './events.ts';
import { PlannedMoveForm } from './PlannedMoveForm.tsx';

type PlannedMoveOnList = DateOfYard & { kind: 'move' };

/** What is due, then everything with a later day. */
export function DateList({ dates: { due, dates } }: { dates: RequestOutput<'dates.list'> }) {
  const { say } = useWords();
  const today = dayOf(new Date());
  const isDue = ({ on }: DateOfYard) => on <= today;
  const dueByNow = dates.filter(isDue);
  const ahead = dates.filter((date) => !isDue(date));
  const isAnyDue = due.length > 0 || dueByNow.length > 0;
  return (
    <>
      {isAnyDue && (
        <Sheet title={say('dates.due')}>
          <ul className={css.dates}>
            {due.map(({ stackId, stackName, due: { why } }) => (
              <li key={stackId} className={css.date}>
                <strong>
                  <a translate="no" href={hrefOf({ name: 'stack', id: stackId })}>
                    {stackName}
                  </a>
                </strong>
                <p>{say(why)}</p>
              </li>
            ))}
            {dueByNow.map((date) => (
              <DateLine key={keyOf(date)} date={date} today={today} />
            ))}
          </ul>
        </Sheet>
      )}
      {(ahead.length > 0 || !isAnyDue) && (
        <Sheet title={say('dates.ahead')}>
          {ahead.length === 0 ? (
            <EmptyState sentence={say('dates.none')} />
          ) : (
            <ul className={css.dates}>
              {ahead.map((date) => (
                <DateLine key={keyOf(date)} date={date} today={today} />
              ))}
            </ul>
          )}
        </Sheet>
      )}
    </>
  );
}

/** A day, as exactly as it is known, and what it is of. */
function DateLine({ date, today }: { date: DateOfYard; today: string }) {
  const words = useWords();
  const { say, formats } = words;
  const detail = detailOf(date, words);
  return (
    <li className={css.date}>
      <strong>
        <time dateTime={date.on}>
          {date.kind === 'ready' ? formats.likely(date.when) : formats.day(date.on)}
        </time>
        {date.on < today && date.kind !== 'ready' && (
          <span className={css.overdue}> {say('dates.overdue')}</span>
        )}
        {date.on === today && <span className="soft"> {say('dates.today')}</span>}
      </strong>
      <div>
        <p>
          {'stackId' in date ? (
            <a href={hrefOf({ name: 'stack', id: date.stackId })}>{titleOf(date, words)}</a>
          ) : (
            titleOf(date, words)
          )}
        </p>
        {detail !== '' && <p className="soft">{detail}</p>}
      </div>
      {date.kind === 'move' && <MoveActions planned={date} />}
    </li>
  );
}

const keyOf = (date: DateOfYard): string =>
  date.kind === 'move'
    ? `move ${date.move.id}`
    : date.kind === 'ready'
      ? `${date.which} ${date.uuid}`
      : `${date.kind} ${date.uuid}`;

/** What can be done with a planned move. */
function MoveActions({ planned }: { planned: PlannedMoveOnList }) {
  const { say } = useWords();
  const { name, placeName, move } = planned;
  const [isEditing, setEditing] = useState(false);
  const { underWay, run, cancel } = useLongWork();
  const at = { id: move.id, basedOn: move.version };
  const undo = (act: string) => (work: string) => bridge().command('acts.undo', { act, work });

  async function make(): Promise<void> {
    const made = await run(
      (work) => bridge().command('plannedMoves.make', { ...at, work }),
      say('dates.move-stopped'),
    );
    if (made) tellUndoable(say('dates.moved', { name, placeName }), undo(made.act));
  }
  async function remove(): Promise<void> {
    const removed = await attempt(bridge().command('plannedMoves.delete', at));
    if (removed) tellUndoable(say('dates.move-deleted', { name }), undo(removed.act));
  }
  if (underWay !== null && underWay.total > 0)
    return <WorkUnderWay label={say('dates.moving')} {...underWay} onCancel={cancel} />;
  return (
    <Actions>
      <Button aria-label={say('dates.done-today-of', { name })} onClick={() => void make()}>
        {say('dates.done-today')}
      </Button>
      <Button aria-label={say('dates.edit-of', { name })} onClick={() => setEditing(true)}>
        {say('common.edit')}
      </Button>
      <Button aria-label={say('dates.delete-of', { name })} onClick={() => void remove()}>
        {say('dates.delete')}
      </Button>
      {isEditing && <PlannedMoveForm planned={planned} onClose={() => setEditing(false)} />}
    </Actions>
  );
}
