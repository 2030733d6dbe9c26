import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { eventsOf } from '../../../../renderer/features/dates/events.ts';
import { calendarFile } from '../../../../shared-core/calendar/calendar-file.ts';
import type { RequestOutput } from '../../../../shared-core/contract/requests.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { say } from '../../app/a-window.ts';

const stack = { stackId: 1, stackName: 'Red oak, north stack', uuid: '7405bc0f-c3bf-4f48-ab24-7d9db4d2176b' };
const day = (likely: string) => ({ likely, from: likely, to: null });
const dates: RequestOutput<'dates.list'> = {
  due: [{ ...stack, due: { kind: 'first-round', why: message('next-step.not-probed') } }],
  dates: [
    {
      kind: 'ready',
      which: 'next',
      boards: 5,
      on: '2027-02-01',
      when: day('2027-02-01'),
      placeName: null,
      ...stack,
    },
    {
      kind: 'ready',
      which: 'last',
      boards: 5,
      on: '2027-06-01',
      when: day('2027-06-01'),
      placeName: 'Shop',
      ...stack,
    },
    {
      kind: 'needed',
      on: '2027-07-01',
      projectId: 4,
      name: 'Table; for Ann',
      uuid: 'c5a40d83-0376-4496-994d-643727bc9be7',
      boards: 3,
    },
  ],
};
const read = (today: string, of = dates) =>
  new ICAL.Component(ICAL.parse(calendarFile(eventsOf(of, today, { say }), `${today}T08:00:00.000Z`)))
    .getAllSubcomponents('vevent')
    .map((each) => new ICAL.Event(each));

test('each date is one event, with its words', () => {
  expect(read('2026-11-27').map(({ summary, startDate }) => [startDate.toString(), summary])).toEqual([
    ['2026-11-27', 'Probe Red oak, north stack'],
    ['2027-02-01', 'Next board of Red oak, north stack ready'],
    ['2027-06-01', 'Last of 5 boards of Red oak, north stack ready'],
    ['2027-07-01', 'Table; for Ann needs 3 boards'],
  ]);
  expect(read('2026-11-27')[2]!.description).toBe(
    'About Jun 2027; it may take over two years. If moved to Shop. A round there makes the date more certain.',
  );
  const soon = { ...dates.dates[0]!, when: { likely: '2027-02-01', from: '2027-01-10', to: '2027-03-01' } };
  const [, certain] = read('2026-11-27', { ...dates, dates: [soon as (typeof dates.dates)[0]] });
  expect(certain!.description).not.toMatch('narrows');
});

test('a later file updates the same events, though their days are others', () => {
  const later = {
    ...dates,
    due: [],
    dates: [
      { kind: 'probe' as const, on: '2027-01-20', readAt: null, isOfSome: false, boardCode: null, ...stack },
      ...dates.dates,
    ],
  };
  const uids = (events: ReturnType<typeof read>) => events.map(({ uid }) => uid).toSorted();
  // What was due is probed next on another day: the same event.
  expect(uids(read('2026-12-05', later))).toEqual(uids(read('2026-11-27')));
  expect(new Set(uids(read('2026-11-27'))).size).toBe(4);
});
