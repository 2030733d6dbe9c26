import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../shared-core/time.ts';
import { say } from './a-window.ts';
import { pastPage } from './past-page.ts';
import { dampen, outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

// The clock of the yard begins at 08:00 UTC on June 1, 2026. The values are invented.
withYardOfTwo();

const ids = () => yard.boards.map(({ id }) => id) as [number, number];
const dates = () => yard.query('dates.list', {});
const shed = () =>
  yard.command('places.add', {
    name: 'Pole shed',
    kind: 'open-shed',
    air: Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.75 })),
  });
const plan = async (more: object = {}) => {
  const place = await shed();
  return yard.command('plannedMoves.add', {
    stackId: yard.stack.id,
    boardId: null,
    placeId: place.id,
    plannedOn: '2026-06-10',
    note: '',
    ...more,
  });
};
const placesOf = async () =>
  Promise.all(ids().map(async (id) => (await yard.query('boards.get', { id })).board.placeName));

/** Both boards are probed, each with these values. */
const round = (raws: number[]) =>
  yard.command(
    'pastRounds.save',
    pastPage({
      startedAt: yard.now(),
      isDayOnly: false,
      depths: Array(4).fill('pins'),
      lines: ids().map((boardId) => ({ boardId, raws })),
    }),
  );

describe('planned moves', () => {
  test('one is planned, changed, and shown on its day', async () => {
    const move = await plan();
    const { version } = await yard.command('plannedMoves.edit', {
      id: move.id,
      basedOn: move.version,
      changed: { plannedOn: '2026-06-20', note: 'With the trailer' },
    });
    expect((await dates()).dates).toMatchObject([
      {
        kind: 'move',
        on: '2026-06-20',
        name: 'Walnut',
        placeName: 'Pole shed',
        move: { note: 'With the trailer', version },
      },
    ]);
    expect(
      await yard.refusal('plannedMoves.edit', { id: move.id, basedOn: 1, changed: { note: 'Other' } }),
    ).toMatch(/Somebody|another|meanwhile/i);
  });

  test('done today, all boards of the stack are there, the stack too, and the plan is gone', async () => {
    const { id, version } = await plan();
    yard.later(DAY_MS);
    const { act } = await yard.command('plannedMoves.make', { id, basedOn: version });
    expect(await placesOf()).toEqual(['Pole shed', 'Pole shed']);
    expect((await yard.query('stacks.get', { id: yard.stack.id })).placeName).toBe('Pole shed');
    expect((await dates()).dates.filter(({ kind }) => kind === 'move')).toEqual([]);
    await yard.command('acts.undo', { act });
    expect(await placesOf()).toEqual(['Shop', 'Shop']);
    expect((await dates()).dates).toMatchObject([{ kind: 'move', name: 'Walnut' }]);
  });

  test('none leads a board to where it is', async () => {
    const boardId = ids()[0];
    const { board } = await yard.query('boards.get', { id: boardId });
    const back = { stackId: null, boardId, placeId: board.placeId };
    await expect(plan(back)).rejects.toThrow();
    const place = await yard.query('places.list', {});
    const shedId = place.find(({ name }) => name === 'Pole shed')!.id;
    const to = { stackId: null, boardId, plannedOn: '2026-06-10', note: '' };
    await yard.command('plannedMoves.add', { ...to, placeId: shedId });
    await yard.command('plannedMoves.add', { ...to, placeId: board.placeId, plannedOn: '2026-07-10' });
    expect((await dates()).dates).toHaveLength(2);
  });

  test('those of a stack or a board are on its page', async () => {
    const { id } = await plan({ stackId: null, boardId: ids()[1] });
    const of = async (stackId: number | null, boardId: number | null) =>
      (await yard.query('plannedMoves.of', { stackId, boardId })).map(({ move }) => move.id);
    expect(await of(null, ids()[1])).toEqual([id]);
    expect(await of(null, ids()[0])).toEqual([]);
    expect(await of(yard.stack.id, null)).toEqual([]);
  });

  test('one board of a stack is moved alone', async () => {
    const { id, version } = await plan({ stackId: null, boardId: ids()[1] });
    yard.later(DAY_MS);
    await yard.command('plannedMoves.make', { id, basedOn: version });
    expect(await placesOf()).toEqual(['Shop', 'Pole shed']);
  });

  test('is of a stack or of a board', async () => {
    expect(
      await yard.refusal('plannedMoves.add', {
        stackId: null,
        boardId: null,
        placeId: yard.place.id,
        plannedOn: '2026-06-10',
        note: '',
      }),
    ).toMatch('Choose a stack or a board.');
  });

  test('deleted, it can be brought back', async () => {
    const { id, version } = await plan();
    const { act } = await yard.command('plannedMoves.delete', { id, basedOn: version });
    expect((await dates()).dates).toEqual([]);
    await yard.command('acts.undo', { act });
    expect((await dates()).dates).toHaveLength(1);
  });
});

describe('a stack that was read once', () => {
  const readOn = (day: string) =>
    yard.command(
      'pastRounds.save',
      pastPage({
        startedAt: `${day}T12:00:00.000Z`,
        depths: ['unknown', 'unknown'],
        lines: ids().map((boardId) => ({ boardId, raws: [24, 24] })),
      }),
    );
  const probes = async () => (await dates()).dates.filter(({ kind }) => kind === 'probe');
  test('is read again after three months at the latest, and is overdue since where that has passed', async () => {
    // What is due is a place then, and no forecast names a day.
    await dampen();
    await readOn('2025-06-10');
    await outlooksMade();
    const [stack] = (await dates()).due;
    expect(stack!.due.kind).toBe('overdue');
    expect(say(stack!.due.why)).toMatch(
      /^Probing has been overdue since Sep 8, 2025\. Last probed Jun 10, 2025\. 2 boards /,
    );
    expect(await probes()).toEqual([]);
    await readOn('2026-05-30');
    await outlooksMade();
    // 90 days later.
    await expect.poll(probes, { timeout: 10_000 }).toMatchObject([{ on: '2026-08-28' }]);
  });

  test('is due on the list of stacks, its page and Dates alike, once its readings are old', async () => {
    await readOn('2026-05-30');
    await outlooksMade();
    const everywhere = async () => {
      const [stack] = await yard.query('stacks.list', {});
      const page = await yard.query('stacks.get', { id: yard.stack.id });
      const [onDates] = (await dates()).due;
      return [stack!.due, page.due, onDates?.due ?? null];
    };
    yard.later(200 * DAY_MS);
    await outlooksMade();
    const [due, ...others] = await everywhere();
    expect(due).not.toBeNull();
    expect(others).toEqual([due, due]);
  });
});

test.each([
  ['read in full, and long ago', ['2025-06-10', '2026-05-30'], 2],
  ['one of two read', ['2026-05-30'], 1],
  ['not read', [], 2],
] as const)(
  'boards to probe are the same on lists, on the plan, and where the stack is due: %s',
  async (_, days, boards) => {
    for (const day of days)
      await yard.command(
        'pastRounds.save',
        pastPage({
          startedAt: `${day}T12:00:00.000Z`,
          depths: [8, 8],
          lines: ids()
            .slice(0, boards)
            .map((boardId) => ({ boardId, raws: [9, 9] })),
        }),
      );
    yard.later(100 * DAY_MS);
    await outlooksMade();
    const { rows } = await yard.query('boards.list', {
      stackId: yard.stack.id,
      search: '',
      offset: 0,
      limit: 10,
    });
    const toProbe = rows.filter(({ judgement }) => judgement.next.step === 'probe').map(({ id }) => id);
    const plan = await yard.query('stacks.plan', { id: yard.stack.id, certainty: 0.9 });
    expect(plan!.next.map(({ boardId }) => boardId).toSorted()).toEqual(toProbe.toSorted());
    const [stack] = await yard.query('stacks.list', {});
    const due = (await dates()).due.map((each) => each.due);
    expect(due).toEqual(stack!.due === null ? [] : [stack!.due]);
    expect((await yard.query('stacks.get', { id: yard.stack.id })).due).toEqual(stack!.due);
    expect(stack!.due !== null).toBe(toProbe.length > 0 || due[0]?.kind === 'overdue');
  },
);

describe('projects', () => {
  const add = (name: string, neededBy: string | null) =>
    yard.command('projects.add', { name, neededBy, note: '' });
  const verdicts = async () =>
    (await yard.query('projects.list', {})).map(({ name, boards }) => [
      name,
      ...boards.map(({ code, makesIt, why }) => [code, makesIt, say(why)]),
    ]);

  test('a new one is added with the boards that are reserved for it, in one act', async () => {
    const newProject = { name: 'Table', neededBy: '2026-09-01', note: '' };
    const { act } = await yard.command('reservations.set', { boardIds: ids(), projectId: null, newProject });
    const reserved = async () =>
      (await yard.query('projects.list', {})).map(({ name, boards }) => [name, boards.length]);
    expect(await reserved()).toEqual([['Table', 2]]);
    await yard.command('acts.undo', { act });
    expect(await reserved()).toEqual([]);
    await yard.command('acts.redo', { act });
    expect(await reserved()).toEqual([['Table', 2]]);
    expect(await yard.refusal('reservations.set', { boardIds: ids(), projectId: null, newProject })).toMatch(
      'Table',
    );
  });

  test('a board is reserved for one at a time, and the one needed first comes first', async () => {
    const table = await add('Table', '2026-09-01');
    const desk = await add('Desk', '2026-08-01');
    await yard.command('reservations.set', { boardIds: ids(), projectId: table.id });
    await yard.command('reservations.set', { boardIds: [ids()[1]], projectId: desk.id });
    const unknown = 'No readings yet. Probe it to get a call.';
    expect(await verdicts()).toEqual([
      ['Desk', ['WAL-02', null, unknown]],
      ['Table', ['WAL-01', null, unknown]],
    ]);
    expect(await yard.query('reservations.ofBoard', { boardId: ids()[1] })).toMatchObject({ name: 'Desk' });
    expect((await dates()).dates).toMatchObject([
      { kind: 'needed', on: '2026-08-01', name: 'Desk', boards: 1 },
      { kind: 'needed', on: '2026-09-01', name: 'Table', boards: 1 },
    ]);
    await yard.command('reservations.set', { boardIds: ids(), projectId: null });
    expect(await yard.query('reservations.ofBoard', { boardId: ids()[1] })).toBeNull();
  });

  test('deleted, its boards are free; undone, they are reserved again', async () => {
    const { id, version } = await add('Table', '2026-09-01');
    await yard.command('reservations.set', { boardIds: ids(), projectId: id });
    const { act } = await yard.command('projects.delete', { id, basedOn: version });
    expect(await verdicts()).toEqual([]);
    expect(await yard.query('reservations.ofBoard', { boardId: ids()[0] })).toBeNull();
    await yard.command('acts.undo', { act });
    expect((await yard.query('projects.list', {}))[0]).toMatchObject({ name: 'Table', boards: [{}, {}] });
  });

  test('two of one name could not be told apart', async () => {
    await add('Table', null);
    expect(await yard.refusal('projects.add', { name: 'table', neededBy: null, note: '' })).toBe(
      'There is already a project called table. Nothing was saved. Choose another name.',
    );
  });

  test('says whether each board makes it, by its forecast', async () => {
    const soon = await add('Soon', '2026-06-05');
    const later = await add('Later', '2028-05-01');
    await round([16, 17, 16.2, 17.1]);
    await outlooksMade();
    await yard.command('reservations.set', { boardIds: [ids()[0]], projectId: soon.id });
    await yard.command('reservations.set', { boardIds: [ids()[1]], projectId: later.id });
    const [[, first], [, second]] = (await verdicts()) as [[string, string[]], [string, string[]]];
    expect(first![1]).toBe('no');
    expect(first![2]).toMatch(/^Not in time in any place\. Likely .* where it is, at the soonest\.$/);
    expect(second![1]).toBe('yes');
    expect(second![2]).toMatch(/^Likely .* in Shop, where it is\./);
  });
});

test('the days of stacks are when readings are next of use, and when boards are likely ready', async () => {
  await round([16, 17, 16.2, 17.1]);
  await outlooksMade();
  const { due, dates: all } = await dates();
  expect(all.map(({ kind }) => kind)).toContain('ready');
  // Readings that are of use today are due; else on their day.
  expect(due.length + all.filter(({ kind }) => kind === 'probe').length).toBeGreaterThan(0);
  for (const each of all) if ('uuid' in each) expect(each.uuid).toMatch(/^[0-9a-f-]{36}$/);
  expect(all.map(({ on }) => on)).toEqual(all.map(({ on }) => on).toSorted());
});
