import { expect, test } from 'vitest';
import { DAY_MS } from '../../../shared-core/time.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const startOf = (day: string) => new Date(`${day}T00:00`).toISOString();
const firstMove = async (id: number) => (await yard.query('boards.get', { id })).moves[0];

test('boards added to a stack are at its place since the day that was given, else since now', async () => {
  const sawn = { sawnOn: '2026-03-10' };
  const given = { ...yard.board('WAL-03'), ...sawn, hereSinceOn: '2026-04-02' };
  const [there, entered] = await yard.command('boards.add', [given, { ...yard.board('WAL-04'), ...sawn }]);
  expect(await firstMove(there!.id)).toMatchObject({ since: startOf('2026-04-02'), datedBy: 'day' });
  expect(await firstMove(entered!.id)).toMatchObject({ datedBy: 'clock' });
  const refused = (hereSinceOn: string) =>
    yard.refusal('boards.add', [{ ...yard.board('WAL-05'), ...sawn, hereSinceOn }]);
  expect(await refused('2026-03-09')).toMatch(/^It was sawn on Mar 10(, 2026)?, after that day\./);
  expect(await refused('2030-01-01')).toMatch('That day is in the future.');
});

test('a stack is at its place since the day of most of its boards', async () => {
  const { id } = yard.stack;
  const boards = ['WAL-03', 'WAL-04', 'WAL-05'].map((code) => ({
    ...yard.board(code),
    hereSinceOn: '2026-04-02',
  }));
  await yard.command('boards.add', boards);
  expect(await yard.query('stacks.hereSince', { id })).toEqual({ since: startOf('2026-04-02') });
});

test('the edit of a sawing date also says since when the board is at its place, in one act', async () => {
  const [board] = await yard.command('boards.add', [yard.board('WAL-03')]);
  const { id, version } = board!;
  const edit = (changed: { sawnOn?: string; hereSinceOn: string }) => ({ id, basedOn: version, changed });
  const before = await firstMove(id);
  expect(
    await yard.refusal('boards.edit', edit({ sawnOn: '2026-04-02', hereSinceOn: '2026-04-01' })),
  ).toMatch(/^It was sawn on Apr 2(, 2026)?, after that day\./);
  await yard.command('boards.edit', edit({ sawnOn: '2026-04-02', hereSinceOn: '2026-04-10' }));
  expect(await firstMove(id)).toMatchObject({ since: startOf('2026-04-10'), datedBy: 'day' });
  const [act] = (await yard.query('acts.list', { boardId: id, before: null, limit: 1 })).acts;
  await yard.command('acts.undo', { act: act!.id, work: null });
  expect(await firstMove(id)).toMatchObject({ since: before!.since, datedBy: 'clock' });
  expect((await yard.query('boards.get', { id })).board.sawnOn).toBeNull();
});

test('no board came to its first place after it was moved on', async () => {
  const [board] = yard.boards;
  const { id, version } = board!;
  yard.later(5 * DAY_MS);
  const since = new Date(Date.parse(yard.now()) - 3 * DAY_MS).toISOString();
  const to = { placeId: yard.place.id, since, isDayOnly: true, work: null };
  await yard.command('boards.move', { ...to, boardIds: [id] });
  const hereSinceOn = new Date(yard.now()).toLocaleDateString('sv-SE');
  const edit = { id, basedOn: version, changed: { hereSinceOn } };
  expect(await yard.refusal('boards.edit', edit)).toMatch(/WAL-01 .*Shop/);
  expect(await firstMove(id)).toMatchObject({ datedBy: 'clock' });
});
