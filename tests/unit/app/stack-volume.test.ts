import { expect, test } from 'vitest';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo({ thicknessMm: 27 });

const volume = () => yard.query('stacks.volume', { id: yard.stack.id });
async function probe(boardIndex: number, raw: number, woodTempC = 20) {
  const roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC })).id;
  await aimAt(roundId, boardIndex, 0);
  for (let spot = 0; spot < 4; spot++) await type(roundId, raw);
}

test('two boards of 27 x 200 x 2400 mm are tallied one by one, as the trade does', async () => {
  // 1 1/16 in counts as 1 in; 7.87 in x 7 ft / 12 is 4.6, so 5 square feet and 5 board feet each
  // (rules of the National Hardwood Lumber Association, from memory). 0.027 x 0.20 x 2.4 m is 0.013 m³ each.
  expect(await volume()).toMatchObject({ boards: 2, measured: 2, boardFeet: 10, cubicMeters: 0.026 });
});

test('a board of unknown width is not in the totals, and listed as missing', async () => {
  await yard.command('boards.add', [{ ...yard.board('WAL-03'), widthMm: null }]);
  const found = await volume();
  expect(found).toMatchObject({ boards: 3, measured: 2, boardFeet: 10 });
  expect(found.missing).toContainEqual({ code: 'stacks.size-missing', facts: { boards: 1 } });
});

test('mass is that of the probed boards, now and at the middle of the target range', async () => {
  expect(await volume()).toMatchObject({ mass: null, targetPct: 7 });
  await probe(0, 15);
  const { mass, missing } = await volume();
  expect(missing).toEqual([{ code: 'stacks.weight-not-probed', facts: { boards: 1 } }]);
  const averagePct = (await yard.query('boards.get', { id: yard.boards[0]!.id })).findings[0]!.averagePct!;
  // The oven-dry mass stays, the water goes.
  expect(mass!.nowKg / (100 + averagePct)).toBeCloseTo(mass!.targetKg / 107, 9);
  // Wood Handbook (FPL-GTR-282), Table 5-3a: black walnut, specific gravity 0.55 at 12 %, as listed in open code: 616 kg/m³.
  expect(mass!.nowKg / (0.027 * 0.2 * 2.4)).toBeGreaterThan(600);
  expect(mass!.nowKg / (0.027 * 0.2 * 2.4)).toBeLessThan(640);
});

test('a board whose readings are all questionable has no mass', async () => {
  // In a shop at 20 °C the wood is not at 45 °C.
  await probe(0, 15, 45);
  const { mass, missing } = await volume();
  expect(mass).toBeNull();
  expect(missing).toEqual([{ code: 'stacks.weight-not-probed', facts: { boards: 2 } }]);
});

test('a species of unknown density has a volume and no mass', async () => {
  await yard.command('species.edit', {
    id: 'walnut-black',
    basedOn: 1,
    changed: { basicSpecificGravity: null },
  });
  await probe(0, 15);
  const found = await volume();
  expect(found).toMatchObject({ boardFeet: 10, mass: null });
  expect(found.missing).toEqual([{ code: 'stacks.density-missing', facts: { speciesName: 'Black walnut' } }]);
});

test('a stack that is not there is refused', async () => {
  expect(await yard.refusal('stacks.volume', { id: 99 })).toMatch(/stack is not in this yard/);
});

test('without any total there is nothing to say of what is not in it', async () => {
  const stack = await yard.command('stacks.add', {
    name: 'Rough',
    placeId: yard.place.id,
    endUseId: 'furniture',
    topCover: 'covered',
    note: '',
  });
  await yard.command('boards.add', [
    { ...yard.board('RGH-01'), stackId: stack.id, widthMm: null, lengthMm: null },
  ]);
  expect((await yard.query('stacks.volume', { id: stack.id })).missing).toEqual([]);
});

test('the yard is tallied by species and call, boards of all stacks together', async () => {
  await probe(0, 15);
  const { rows, total } = await yard.query('tallies.get', { stackId: null, by: ['species', 'call'] });
  expect(rows).toMatchObject([
    { speciesName: 'Black walnut', call: 'keep-drying', boards: 1, weighed: 1 },
    { speciesName: 'Black walnut', call: null, boards: 1, weighed: 0, notProbed: 1 },
  ]);
  expect(total).toMatchObject({ boards: 2, boardFeet: 10 });
});

test('a yard of more boards than are read at a time is tallied whole', async () => {
  const codes = Array.from({ length: 500 }, (_, index) => index);
  for (let hundreds = 0; hundreds < 5; hundreds++)
    await yard.command(
      'boards.add',
      codes.map((index) => yard.board(`T-${hundreds}-${index}`)),
    );
  const { total } = await yard.query('tallies.get', { stackId: yard.stack.id, by: [] });
  expect(total).toMatchObject({ boards: 2502, measured: 2502, boardFeet: 12_510 });
});
