import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { AppContext } from '../../../electron/app/context.ts';
import { placeCommands } from '../../../electron/app/stock/places.ts';
import { openYard } from '../../../electron/store/yard.ts';
import type { QueryName, RequestInput } from '../../../shared-core/contract/requests.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { addPicture } from './a-picture.ts';
import { type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// A query that takes long must not see what the background forecasts meanwhile.
withYardOfTwo({ forecastAfterMs: 600_000 });

/** An edit of several boards, which a query asks about. */
const edit = '3f1e6c1a-8f5f-4f57-9d0c-5b2a7b1c9e10';

/** Every query with something to ask: the compiler misses one that is not here. */
const inputs: { [N in QueryName]: RequestInput<N> } = {
  'yard.info': {},
  'recovery.notes': {},
  'recovery.report': {},
  'recovery.newestActAt': {},
  'stacks.list': {},
  'stacks.get': { id: 1 },
  'stacks.plan': { id: 1, certainty: 0.9 },
  'stacks.ifMoved': { id: 1 },
  'stacks.dueToMove': { id: 1, kind: 'bring-in' },
  'stacks.volume': { id: 1 },
  'tallies.get': { stackId: null, by: ['species', 'thickness', 'call', 'stack'] },
  'stacks.nextLayer': { id: 1 },
  'stacks.hereSince': { id: 1 },
  'boards.list': { stackId: 1, search: 'WAL', offset: 0, limit: 10 },
  'boards.get': { id: 1 },
  'moves.together': { id: 1 },
  'boards.forecast': { id: 1 },
  'boards.withCodes': { codes: ['WAL-01', 'WAL-99'] },
  'boards.nextCode': { stackId: 1 },
  'boards.pieceCodes': { boardId: 1, pieces: 3 },
  'boards.alike': { boardId: 1, search: '', limit: 8 },
  'boards.twice': { id: 1, otherId: 2 },
  'boards.callsChanged': { act: edit },
  'acts.list': { boardId: null, before: null, limit: 50 },
  'places.list': {},
  'places.closed': {},
  'stacks.closed': {},
  'stations.find': { text: 'Asheville' },
  'stations.ofRegion': { timeZone: 'America/New_York' },
  'species.list': {},
  'endUses.list': {},
  'ovenChecks.ofSpecies': { speciesId: 'walnut-black' },
  'samples.get': { boardId: 1 },
  'meter.state': {},
  'rounds.get': { roundId: 1 },
  'meterChecks.list': {},
  'meterChecks.ofRound': { roundId: 1 },
  'rounds.clock': {},
  'pastRounds.page': { stackId: 1, startedAt: '2026-05-02T17:00:00.000Z' },
  'pastRounds.boardOf': { code: 'WAL-01' },
  'pastRounds.check': {
    stackId: 1,
    startedAt: '2026-05-02T17:00:00.000Z',
    meterId: null,
    unit: 'pct',
    woodTempC: null,
    airTempC: 12,
    depths: ['pins', 'unknown'],
    line: { boardId: 1, raws: [12.4, 13] },
  },
  'rounds.ofBoard': { boardId: 1 },
  'backups.state': {},
  'backups.list': {},
  'backups.look': { file: join(import.meta.dirname, '../store/layouts/layout-1.sqlite') },
  'exchange.look': {
    file: join(import.meta.dirname, '../store/layouts/layout-9.sqlite'),
    work: null,
  },
  'notes.get': { subject: { kind: 'reading', id: 1 } },
  'pictures.list': { subject: { kind: 'board', id: 1 } },
  'pictures.read': { id: 1, offset: 0 },
  'labels.boards': { stackId: 1, search: 'WAL' },
  'labels.boardOf': { code: 'WAL-01' },
  'printers.list': {},
  'labels.calibrationPdf': { paperId: 'sheet', region: { locale: 'en-US', timeZone: 'UTC' } },
  'labels.shapes': { texts: ['胡桃木'] },
  'labels.contents': { boardIds: [1, 2] },
  'labels.pdf': {
    boardIds: [1, 2],
    paperId: 'sheet',
    used: 0,
    region: { locale: 'en-US', timeZone: 'America/Chicago' },
  },
  'boards.left': {},
  'reports.content': { kind: 'passport', id: 1 },
  'reports.pdf': {
    kind: 'stack',
    id: 1,
    paper: 'letter',
    region: { locale: 'en-US', timeZone: 'America/Chicago' },
  },
  'reports.check': { checkCode: 'WAL-01/B39E-0R01-2345-6ABS' },
  'sensors.list': {},
  'sensors.near': {},
  'sensors.probe': {},
  'air.ofPlace': { placeId: 1 },
  'dates.list': {},
  'plannedMoves.of': { stackId: 1, boardId: null },
  'projects.list': {},
  'reservations.ofBoard': { boardId: 1 },
  'settings.get': {},
  'meters.list': {},
  'meters.closed': {},
  'readings.givenDepths': { readingId: 1 },
  'readings.onBoard': { readingId: 1, boardId: 1 },
  'meters.use': { meterId: 1 },
  'meters.file': { meterId: 1 },
  'readings.asReadWith': { readingId: 1, meterId: 1 },
};

/** Looks at the file from outside. */
let outside: Database.Database;
beforeEach(async () => {
  const boards = [{ id: 1, basedOn: 1 }];
  await yard.command('boards.editTogether', { boards, changed: { log: 'Ridge' } }, edit);
  // What follows from it is done before the round: it would compare its boards.
  await setImmediate();
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await type(roundId, 12.4);
  await yard.command('meters.add', { name: 'Hand meter', profile: unknownProfile });
  await addPicture(yard, { kind: 'board', id: 1 });
  outside = new Database(join(yard.dataDir, 'yard.sqlite'));
});
afterEach(() => {
  outside.close();
});
/** Another number after anyone else wrote to the file. */
const dataVersion = () => outside.pragma('data_version', { simple: true });

test.each(Object.entries(inputs))('%s answers and leaves the file as it was', async (name, input) => {
  const before = dataVersion();
  expect(await yard.answer(name, input)).toMatchObject({ ok: true });
  expect(dataVersion()).toBe(before);
});

test('a command is noticed by the same measure', async () => {
  const before = dataVersion();
  await yard.command('places.edit', { id: yard.place.id, basedOn: 1, changed: { name: 'Loft' } });
  expect(dataVersion()).not.toBe(before);
});

test('what queries are given cannot write', () => {
  const opened = openYard(join(yard.dataDir, 'yard.sqlite'));
  const context = { yard: () => opened.reader, now: yard.now } as unknown as AppContext;
  const { id: _, version: __, ...place } = yard.place;
  const add = placeCommands(context, { judgeAgain: () => undefined } as never)['places.add'];
  expect(() => add({ ...place, name: 'Loft' })).toThrow(TypeError);
  opened.close();
});

test('one limit of a use is not edited past the other', async () => {
  const { id, version: basedOn, maxPct } = (await yard.query('endUses.list', {}))[0]!;
  const crossed = { id, basedOn, changed: { minPct: maxPct + 4 } };
  expect(await yard.refusal('endUses.edit', crossed)).toBe(
    'Type more than the lowest average. Nothing was saved.',
  );
  expect((await yard.query('endUses.list', {}))[0]).toMatchObject({ version: basedOn, maxPct });
});
