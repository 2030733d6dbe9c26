import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { meterFileOf } from '../../../shared-core/contract/meter-file.ts';
import type { ActName, RequestInput } from '../../../shared-core/contract/requests.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { addPicture, pictureFile, takePicture } from './a-picture.ts';
import { aTestBlock } from './a-test-block.ts';
import { say } from './a-window.ts';
import { doing, redo, seen, undo } from './seen-yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// Boards that background work changes meanwhile would not be as they were.
withYardOfTwo({ forecastAfterMs: 600_000 });

const board = () => yard.boards[0]!;
const firstMoves = async () => (await yard.query('boards.get', { id: board().id })).moves;
const round = async (): Promise<number> => (await yard.beginRound()).id;
const readingId = async (): Promise<number> => {
  await round();
  return (await yard.query('boards.get', { id: board().id })).readings[0]!.id;
};
const meter = (name = 'Hand meter') => ({ name, profile: { ...unknownProfile, sdPct: 1 } });
const meterId = async (name?: string): Promise<number> =>
  (await yard.command('meters.add', { ...meter(name), roundId: null })).meterId;
const edit = () => ({
  boards: yard.boards.map(({ id, version }) => ({ id, basedOn: version })),
  changed: { speciesId: 'oak-white', note: 'From the ridge' },
});
const check = () => ({
  speciesId: 'walnut-black',
  meterId: null,
  piece: 'A',
  readings: [12],
  unit: 'pct' as const,
  woodTempC: 20,
  wetGrams: 30,
  balanceGrams: 0.1,
  rule: 'ASTM D4442' as const,
  note: '',
});
const checkId = async (): Promise<number> =>
  (await yard.command('ovenChecks.add', check())).flatMap(({ checks }) => checks)[0]!.id;
const cut = () => ({ boardId: board().id, boardKg: 8, wetGrams: [40, 42], at: yard.now() });
const species = async () => {
  const {
    version: _,
    builtIn: __,
    ...walnut
  } = (await yard.query('species.list', {})).find(({ id }) => id === 'walnut-black')!;
  return { ...walnut, id: 'own-walnut', name: 'Own walnut' };
};
const endUse = async () => {
  const { version: _, builtIn: __, ...use } = (await yard.query('endUses.list', {}))[0]!;
  return { ...use, id: 'own-use', name: 'Own use' };
};
const month = { tempC: 15, rh: 0.5 };
const place = (name: string) => ({
  name,
  kind: 'open-shed' as const,
  air: Array.from({ length: 12 }, () => month),
});
const emptyStackId = async (placeId = yard.place.id): Promise<number> =>
  (
    await yard.command('stacks.add', {
      name: 'Oak',
      placeId,
      endUseId: 'furniture',
      topCover: 'covered',
      note: '',
    })
  ).id;
const placeId = async (): Promise<number> => (await yard.command('places.add', place('Shed'))).id;

const sensor = () => ({
  name: 'Shed wall',
  deviceId: 'made-up-1',
  kind: 'air' as const,
  placeId: yard.place.id,
});
const air = (rh: number) => ({
  placeId: yard.place.id,
  measuredOn: '2026-05-01',
  tempC: 18,
  rh,
  isReplacing: false,
});
const airId = async (): Promise<number> => {
  await yard.command('air.type', air(0.6));
  return (await yard.query('air.ofPlace', { placeId: yard.place.id })).typed[0]!.id;
};
/** With a log of three days. */
const loggedPlaceId = async (): Promise<number> => {
  const days = ['2026-05-01', '2026-05-02', '2026-05-03'];
  const rows = days.flatMap((day) =>
    Array.from({ length: 8 }, (_, at) => `${day} ${String(3 * at).padStart(2, '0')}:00,18,${60 + at}`),
  );
  const plan = await checkedTable(['Date,Temperature (°C),RH (%)', ...rows].join('\n'));
  await yard.command('imports.save', { plan });
  return yard.place.id;
};
const sensorId = async (): Promise<number> => (await yard.command('sensors.add', sensor())).id;

const plannedMove = () => ({
  stackId: yard.stack.id,
  boardId: null,
  placeId: yard.place.id,
  plannedOn: '2026-06-20',
  note: '',
});
/** Of a meter that was a point off. */
async function checkedBlock() {
  const block = await yard.command('testBlocks.add', aTestBlock(await meterId()));
  await yard.command('meterChecks.add', { blockId: block.id, shown: 13, tempC: null });
  return block;
}
async function correctedCheck(): Promise<number> {
  const { id } = await checkedBlock();
  const checkId = (await yard.query('meterChecks.list', {})).find(({ block }) => block.id === id)!.checks[0]!
    .id;
  await yard.command('meterChecks.correct', { checkId });
  return checkId;
}
const project = { name: 'Table', neededBy: '2026-09-01', note: '' };
/** Of one that the other board is reserved for. */
async function projectId(): Promise<number> {
  const { id } = await yard.command('projects.add', project);
  await yard.command('reservations.set', { boardIds: [yard.boards[1]!.id], projectId: id });
  return id;
}

/** A table of a new board with a reading, and one of a known board. */
async function checkedTable(
  text = 'Board,Date,MC\nIMP-1,2026-05-01,14\nWAL-01,2026-05-01,15\n',
): Promise<string> {
  const file = join(yard.dataDir, 'table.csv');
  writeFileSync(file, text);
  const { table, guessed } = await yard.command('imports.read', { file, units: 'metric', order: 'dmy' });
  const defaults = { stackName: 'Imported', place: { placeId: yard.place.id }, endUseId: 'furniture' };
  const ofBoards = { speciesId: 'walnut-black', thicknessMm: 27, thicknessQuarters: null, meterId: null };
  const names = { speciesOfNames: {}, placesOfNames: {}, fixes: [], order: null, leftOut: [] };
  const choices = { ...guessed, ...defaults, ...ofBoards, ...names };
  return (await yard.command('imports.check', { table, choices })).plan;
}

const pictureId = async () => (await addPicture(yard, { kind: 'board', id: board().id })).id;

/** What it takes to do each act. The compiler misses one that is not here. */
const acts: { [N in ActName]: () => Promise<RequestInput<N>> | RequestInput<N> } = {
  'boards.add': () => [yard.board('WAL-03')],
  'imports.save': async () => ({ plan: await checkedTable() }),
  'boards.edit': () => ({ id: board().id, basedOn: 1, changed: { thicknessMm: 26.98 } }),
  'boards.editTogether': edit,
  'boards.move': async () => ({ boardIds: [board().id], placeId: await placeId(), since: yard.now() }),
  'stacks.close': async () => ({ id: await emptyStackId(), basedOn: 1 }),
  'stacks.reopen': async () => {
    const id = await emptyStackId();
    await yard.command('stacks.close', { id, basedOn: 1 });
    return { id, basedOn: 2, name: 'Oak of old' };
  },
  'stacks.delete': async () => {
    const id = await emptyStackId();
    await yard.command('plannedMoves.add', { ...plannedMove(), stackId: id });
    return { id, basedOn: 1 };
  },
  'stacks.merge': async () => {
    await yard.command('stacks.edit', {
      id: yard.stack.id,
      basedOn: 1,
      changed: { note: 'On the north side' },
    });
    await yard.command('plannedMoves.add', plannedMove());
    return {
      id: yard.stack.id,
      basedOn: 2,
      intoId: await emptyStackId(await placeId()),
      move: { placeId: (await yard.query('places.list', {}))[1]!.id, since: yard.now() },
    };
  },
  'places.close': async () => ({ id: await placeId(), basedOn: 1 }),
  'places.reopen': async () => {
    const id = await placeId();
    await yard.command('places.close', { id, basedOn: 1 });
    return { id, basedOn: 2, name: 'Old shed' };
  },
  'places.delete': async () => ({ id: await placeId(), basedOn: 1 }),
  'places.merge': async () => {
    const intoId = await placeId();
    const boardIds = yard.boards.map(({ id }) => id);
    await yard.command('boards.move', { boardIds, placeId: intoId, since: yard.now() });
    return { id: yard.place.id, basedOn: 1, intoId, air: 'own' };
  },
  'moves.edit': async () => {
    const { id, version } = (await firstMoves())[0]!;
    return {
      id,
      basedOn: version,
      changed: { placeId: await placeId(), when: { since: '2026-05-01T12:00:00.000Z', isDayOnly: true } },
      together: true,
    };
  },
  'moves.delete': async () => {
    const boardIds = yard.boards.map(({ id }) => id);
    await yard.command('boards.move', { boardIds, placeId: await placeId(), since: yard.now() });
    const { id, version } = (await firstMoves())[1]!;
    return { id, basedOn: version, together: true };
  },
  'boards.archive': () => ({ boardIds: [board().id], why: 'sold', note: 'Miller', at: yard.now() }),
  'boards.delete': () => ({ boardIds: [board().id] }),
  'boards.cut': async () => {
    const { id: roundId } = await yard.beginRound();
    await yard.command('rounds.finish', { roundId });
    await projectId();
    yard.later(60_000);
    return {
      boardId: board().id,
      how: 'ripped',
      at: yard.now(),
      pieces: [1, 2].map((n) => ({ code: `WAL-01-${n}`, widthMm: 95, lengthMm: 2400 })),
    };
  },
  'boards.merge': async () => {
    const { id: roundId } = await yard.beginRound();
    await yard.command('rounds.finish', { roundId });
    await yard.command('boards.move', {
      boardIds: [board().id],
      placeId: await placeId(),
      since: yard.now(),
    });
    await yard.command('plannedMoves.add', { ...plannedMove(), stackId: null, boardId: board().id });
    await projectId();
    await pictureId();
    const [other, own] = yard.boards;
    const { act: _, output } = await doing('boards.edit', {
      id: other!.id,
      basedOn: 1,
      changed: { note: 'Knot', widthMm: 210 },
    });
    return {
      id: own!.id,
      basedOn: 1,
      otherId: other!.id,
      otherBasedOn: output.version,
      taken: ['width'],
    };
  },
  'boards.bringBack': async () => {
    await yard.command('boards.archive', { boardIds: [board().id], why: 'used', at: yard.now() });
    return { boards: [{ id: board().id, code: 'WAL-11' }] };
  },
  'boards.confirmSpecies': () => ({ id: board().id }),
  'stacks.add': () => ({
    name: 'Oak',
    placeId: yard.place.id,
    endUseId: 'furniture',
    topCover: 'covered',
    note: '',
  }),
  'stacks.start': () => ({
    name: 'Ash',
    speciesId: 'ash-white',
    thicknessMm: 27,
    thicknessQuarters: null,
    boards: 3,
    place: place('Barn'),
  }),
  'stacks.edit': () => ({ id: yard.stack.id, basedOn: 1, changed: { name: 'Black walnut' } }),
  'stacks.move': async () => ({ id: yard.stack.id, placeId: await placeId(), since: yard.now() }),
  'places.add': () => place('Shed'),
  'places.edit': () => ({ id: yard.place.id, basedOn: 1, changed: { name: 'Workshop' } }),
  'sensors.add': () => sensor(),
  'sensors.edit': async () => ({ id: await sensorId(), basedOn: 1, changed: { name: 'North wall' } }),
  'sensors.move': async () => ({ id: await sensorId(), placeId: await placeId(), sinceOn: '2026-05-01' }),
  'sensors.remove': async () => ({ id: await sensorId(), basedOn: 1 }),
  'air.type': () => air(0.6),
  'air.edit': async () => ({ ...air(0.5), id: await airId() }),
  'air.delete': async () => ({ id: await airId() }),
  'air.exclude': async () => ({ placeId: await loggedPlaceId(), fromOn: '2026-05-01', toOn: '2026-05-02' }),
  'air.include': async () => {
    const placeId = await loggedPlaceId();
    await yard.command('air.exclude', { placeId, fromOn: '2026-05-01', toOn: '2026-05-02' });
    return { placeId, fromOn: '2026-05-02', toOn: '2026-05-02' };
  },
  'species.add': species,
  'species.edit': async () => {
    const own = await species();
    await yard.command('species.add', own);
    return { id: own.id, basedOn: 1, changed: { name: 'Walnut of ours' } };
  },
  'endUses.add': endUse,
  'endUses.edit': async () => {
    const own = await endUse();
    await yard.command('endUses.add', own);
    return { id: own.id, basedOn: 1, changed: { name: 'Use of ours' } };
  },
  'ovenChecks.add': check,
  'ovenChecks.weigh': async () => ({ checkId: await checkId(), grams: 29, at: yard.now() }),
  'ovenChecks.exclude': async () => ({ checkId: await checkId(), weightId: null, why: { code: 'knot' } }),
  'ovenChecks.include': async () => {
    const id = await checkId();
    await yard.command('ovenChecks.exclude', { checkId: id, weightId: null, why: { code: 'knot' } });
    return { checkId: id, weightId: null };
  },
  'ovenChecks.useFit': async () => {
    await checkId();
    return { speciesId: 'walnut-black', meterId: null, inUse: false };
  },
  'samples.cut': cut,
  'samples.drySection': async () => {
    const { cuts } = await yard.command('samples.cut', cut());
    return { sectionId: cuts[0]!.sections[0]!.id, grams: 30, at: yard.now() };
  },
  'samples.weigh': () => ({ boardId: board().id, kg: 7, at: yard.now() }),
  'samples.exclude': async () => {
    const { weights } = await yard.command('samples.weigh', { boardId: board().id, kg: 7, at: yard.now() });
    return { what: 'weight', id: weights[0]!.id, why: { code: 'wrong-board' } };
  },
  'samples.include': async () => {
    const { cuts } = await yard.command('samples.cut', cut());
    const record = { what: 'cut' as const, id: cuts[0]!.id };
    await yard.command('samples.exclude', { ...record, why: { code: 'wrong-board' } });
    return record;
  },
  'meters.add': async () => ({ ...meter(), roundId: await round() }),
  'meters.edit': async () => ({
    id: await meterId(),
    basedOn: 1,
    changed: { ...meter('Pin meter'), profile: unknownProfile },
  }),
  'meters.useFile': async () => ({
    meterId: await meterId(),
    file: meterFileOf(null, { ...unknownProfile, sdPct: 2 }),
  }),
  'meter.describe': async () => {
    await yard.command('meter.scan', {});
    const { description } = await yard.command('meter.connect', { deviceId: 'hand' });
    yard.meter.recall = (known) => known && yard.meter.describe(known);
    return { ...description!, range: { min: 5, max: 50 } };
  },
  'meter.isAnother': async () => {
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    await yard.command('meter.connect', { deviceId: 'c0ffee00beef' });
    return { deviceId: 'c0ffee00beef' };
  },
  'meters.recognize': async () => {
    await yard.command('meter.scan', {});
    const { meterId: id } = await yard.command('meter.connect', { deviceId: 'hand' });
    await yard.command('meter.connect', { deviceId: 'c0ffee00beef' });
    return { meterId: id!, deviceId: 'c0ffee00beef' };
  },
  'meters.delete': async () => ({ meterId: await meterId() }),
  'meters.close': async () => ({ meterId: await meterId() }),
  'testBlocks.add': async () => aTestBlock(await meterId()),
  'testBlocks.edit': async () => ({ id: (await checkedBlock()).id, basedOn: 1, changed: { expected: 12.5 } }),
  'testBlocks.close': async () => ({ id: (await checkedBlock()).id, basedOn: 1 }),
  'meterChecks.add': async () => ({ blockId: (await checkedBlock()).id, shown: 12.4, tempC: 20 }),
  'meterChecks.correct': async () => {
    await readingId();
    const { meterId: of } = await checkedBlock();
    const { id: checkId } = (await yard.query('meterChecks.list', {})).find(
      ({ block }) => block.meterId === of,
    )!.checks[0]!;
    return { checkId };
  },
  'meterChecks.exclude': async () => ({ checkId: await correctedCheck(), why: { code: 'not-on-block' } }),
  'meterChecks.include': async () => {
    const checkId = await correctedCheck();
    await yard.command('meterChecks.exclude', { checkId, why: { code: 'typing-slip' } });
    return { checkId };
  },
  'meters.typeFrom': async () => {
    await meterId('One');
    const two = await meterId('Two');
    const [one] = await yard.query('meters.list', {});
    expect(one!.id).not.toBe(two);
    return { meterId: one!.id };
  },
  'meters.updateEarlier': async () => {
    const id = await meterId();
    await round();
    await yard.command('meters.edit', {
      id,
      basedOn: 1,
      changed: { profile: { ...unknownProfile, sdPct: 2 } },
    });
    return { meterId: id };
  },
  'readings.setMeter': async () => ({
    readingId: await readingId(),
    scope: 'reading',
    meterId: await meterId(),
  }),
  'readings.exclude': async () => ({ readingId: await readingId(), why: { code: 'defect' } }),
  'readings.include': async () => {
    const id = await readingId();
    await yard.command('readings.exclude', { readingId: id, why: { code: 'defect' } });
    return { readingId: id };
  },
  'readings.setDepth': async () => {
    const id = await readingId();
    return {
      readingId: id,
      depthMm: 9,
      shown: {
        depthMm: (await yard.query('boards.get', { id: board().id })).readings[0]!.spot.depthMm,
        depthFrom: 'plan',
      },
      wholeRound: false,
    };
  },
  'readings.correct': async () => ({
    readingId: await readingId(),
    corrected: { raw: 14, woodTempC: 15 },
    shown: { raw: 12.4, unit: 'pct', woodTempC: 20 },
  }),
  'readings.moveToBoard': async () => ({
    readingId: await readingId(),
    boardId: yard.boards[1]!.id,
    spotIndex: null,
    scope: 'reading',
  }),
  'rounds.start': () => ({ stackId: yard.stack.id, woodTempC: 20, startedOn: null }),
  'rounds.saveTyped': async () => ({
    roundId: await round(),
    boardId: yard.boards[1]!.id,
    spotIndex: 0,
    newestReadingId: null,
    raw: 11,
  }),
  'rounds.saveLive': async () => {
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    await yard.command('settings.edit', { saveWhenSettled: false });
    const at = { roundId: await round(), boardId: yard.boards[1]!.id, spotIndex: 0 };
    await yard.command('rounds.aim', at);
    yard.meter.show(12, 5);
    return { ...at, newestReadingId: null };
  },
  'rounds.undo': async () => ({ readingId: await readingId() }),
  'rounds.setTemperature': async () => ({ roundId: await round(), boardId: null, woodTempC: 30 }),
  'rounds.planCore': async () => ({
    roundId: await round(),
    boardId: yard.boards[1]!.id,
    core: 'fresh-rip',
    forRound: true,
  }),
  'rounds.finish': async () => ({ roundId: await round() }),
  'rounds.reopen': async () => {
    const roundId = await round();
    await yard.command('rounds.finish', { roundId });
    return { roundId };
  },
  'rounds.edit': async () => {
    const roundId = await round();
    await yard.command('rounds.finish', { roundId });
    const { version } = (await yard.query('rounds.ofBoard', { boardId: board().id }))[0]!;
    return {
      id: roundId,
      basedOn: version,
      changed: { startedAt: '2026-05-30T08:00:00.000Z', isYearRight: true },
    };
  },
  'pastRounds.save': () => ({
    stackId: yard.stack.id,
    startedAt: '2026-05-30T08:00:00.000Z',
    meterId: null,
    unit: 'pct',
    woodTempC: 20,
    airTempC: null,
    depths: ['unknown'],
    isDayOnly: true,
    isDateRight: true,
    lines: [{ boardId: board().id, raws: [13] }],
  }),
  'plannedMoves.add': async () => plannedMove(),
  'plannedMoves.edit': async () => {
    const { id } = await yard.command('plannedMoves.add', plannedMove());
    return { id, basedOn: 1, changed: { plannedOn: '2026-07-01' } };
  },
  'plannedMoves.delete': async () => ({
    id: (await yard.command('plannedMoves.add', plannedMove())).id,
    basedOn: 1,
  }),
  'plannedMoves.make': async () => {
    const planned = { ...plannedMove(), placeId: await placeId() };
    return { id: (await yard.command('plannedMoves.add', planned)).id, basedOn: 1 };
  },
  'projects.add': () => project,
  'projects.edit': async () => ({ id: await projectId(), basedOn: 1, changed: { name: 'Desk' } }),
  'projects.delete': async () => ({ id: await projectId(), basedOn: 1 }),
  'reservations.set': async () => ({ boardIds: [board().id], projectId: await projectId() }),
  'notes.set': () => ({ subject: { kind: 'board', id: board().id }, note: 'Knot', shown: '' }),
  'pictures.add': async () => ({
    subject: { kind: 'board', id: board().id },
    pictures: [
      {
        contentHash: await takePicture(yard, pictureFile('board-end.jpg')),
        caption: 'Blue stain',
        thumbnail: null,
      },
    ],
  }),
  'pictures.edit': async () => ({ id: await pictureId(), basedOn: 1, changed: { caption: 'Knot' } }),
  'pictures.delete': async () => ({ id: await pictureId() }),
  'labels.recordPrint': () => ({ boardIds: [board().id], paperId: 'sheet' }),
  'settings.edit': () => ({ saveWhenSettled: false }),
  'acts.undo': async () => ({ act: (await doing('boards.add', [yard.board('WAL-03')])).act }),
  'acts.redo': async () => {
    const { act } = await doing('boards.add', [yard.board('WAL-03')]);
    await undo(act);
    return { act };
  },
};

/** Acts after which the file says something else, and this yard looks the same: its boards are thin, and no fit is in use. */
const UNSEEN: readonly ActName[] = ['ovenChecks.useFit', 'rounds.planCore'];

const all = Object.entries(acts) as [ActName, () => Promise<RequestInput<ActName>>][];

test.each(all)('%s is undone and redone, whatever it did', async (name, prepare) => {
  const input = await prepare();
  yard.later(60_000);
  const before = await seen();
  const { act } = await doing(name, input);
  const after = await seen();
  // Each is named in the history, and what it was done to.
  const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 50 });
  const line = acts.find(({ id }) => id === act)?.line;
  if (name !== 'acts.undo' && name !== 'acts.redo')
    expect(line && say(line)).toMatch(/^(?!Other changes)[^…]+\.$/);
  if (!UNSEEN.includes(name)) expect(after).not.toEqual(before);
  // To undo what undid something is to redo that.
  const [back, again] = name === 'acts.undo' ? [redo, undo] : [undo, redo];
  for (let turn = 0; turn < 2; turn++) {
    await back(act);
    expect(await seen()).toEqual(before);
    await again(act);
    expect(await seen()).toEqual(after);
  }
});
