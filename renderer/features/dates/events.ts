import type { DayEvent } from '../../../shared-core/calendar/calendar-file.ts';
import type { DateOfYard } from '../../../shared-core/contract/requests/dates.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { isMoveDue } from '../../../shared-core/probing/plan/stack-call.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import type { When } from '../../../shared-core/words/message.ts';
import type { Words } from '../../../shared-core/words/words.ts';

/** What a date is of: "Probe Ridge oak". */
export function titleOf(date: DateOfYard, { say }: Pick<Words, 'say'>): string {
  switch (date.kind) {
    case 'probe':
      return say('dates.probe', { stackName: date.stackName });
    case 'ready':
      return say(date.which === 'next' ? 'dates.ready-next' : 'dates.ready-last', {
        stackName: date.stackName,
        boards: date.boards,
      });
    case 'move':
      return say('dates.move', { name: date.name, placeName: date.placeName });
    case 'needed':
      return say('dates.needed', { name: date.name, boards: date.boards });
  }
}

/** So wide that a person would not believe it without a word on what narrows it: over a year, or without an end. */
const isWide = ({ from, to }: When): boolean =>
  to === null || Date.parse(to) - Date.parse(from) > 365 * DAY_MS;

/** What more is to be said of it; empty for nothing. */
export function detailOf(date: DateOfYard, { say }: Pick<Words, 'say'>): string {
  if (date.kind === 'move') return date.move.note;
  if (date.kind === 'probe') {
    const { readAt: probedOn, isOfSome, boardCode } = date;
    if (probedOn === null) return '';
    if (!isOfSome) return say('dates.last-probed', { probedOn });
    return boardCode === null
      ? say('dates.last-probed-some', { probedOn })
      : say('dates.last-probed-one', { boardCode, probedOn });
  }
  if (date.kind !== 'ready') return '';
  const { when, placeName } = date;
  return [
    say('dates.ready-between', { readyWhen: when, end: when.to === null ? 'open' : 'known' }),
    ...(placeName === null ? [] : [say('dates.ready-where', { placeName })]),
    ...(isWide(when) ? [say('dates.narrows', { where: placeName === null ? 'here' : 'elsewhere' })] : []),
  ].join(' ');
}

/** The same for the same thing in every file of this yard, or a copy of it. */
const uidOf = (what: string, uuid: string): string => `${what}-${uuid}@pintally`;

const whatOf = (date: DateOfYard): [what: string, uuid: string] => {
  if (date.kind === 'move') return ['move', date.move.uuid];
  return [date.kind === 'ready' ? `ready-${date.which}` : date.kind, date.uuid];
};

/** The dates of the yard as all-day events; what is due is so today. */
export const eventsOf = (
  { due, dates }: RequestOutput<'dates.list'>,
  today: string,
  words: Pick<Words, 'say'>,
): DayEvent[] => [
  ...due.map(({ stackName, uuid, due: { kind, why } }) => {
    return {
      // Once it is done, its next day takes the place of this one.
      uid: uidOf(isMoveDue(kind) ? 'due-move' : 'probe', uuid),
      on: today,
      summary: isMoveDue(kind) ? stackName : words.say('dates.probe', { stackName }),
      description: words.say(why),
    };
  }),
  ...dates.map((date) => ({
    uid: uidOf(...whatOf(date)),
    // Probing that is overdue is shown today; in the past, it would be missed.
    on: date.kind === 'probe' && date.on < today ? today : date.on,
    summary: titleOf(date, words),
    description: detailOf(date, words),
  })),
];
