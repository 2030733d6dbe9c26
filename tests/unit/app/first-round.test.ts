/** A board is checked by what it can be until one of its rounds was believed. The rules are the core's (`tests/unit/probing/first-round.test.ts`). */
import { describe, expect, test } from 'vitest';
import type { NewBoard } from '../../../shared-core/contract/yard.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** A board of white oak in a shed, probed with pins that reach its middle. */
async function inShed({
  rh,
  endUseId,
  ...known
}: Partial<NewBoard> & { rh: number; endUseId: string }): Promise<{ stackId: number; boardId: number }> {
  const pins = { lengthMm: 30, insulated: true };
  await yard.command('meters.add', { name: 'Hammer probe', profile: { ...unknownProfile, pins } });
  const air = Array.from({ length: 12 }, () => ({ tempC: 18, rh }));
  const { id: placeId } = await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air });
  const { id: stackId } = await yard.command('stacks.add', {
    name: 'Oak',
    placeId,
    endUseId,
    topCover: 'covered',
    note: '',
  });
  const oak = { ...yard.board('OAK-1'), stackId, speciesId: 'oak-white', thicknessMm: 54, ...known };
  const [board] = await yard.command('boards.add', [oak]);
  return { stackId, boardId: board!.id };
}

/** A finished round: its call, and the rules that speak against its readings. */
async function walk(stackId: number, ...raws: number[]) {
  const { id: roundId } = await yard.command('rounds.start', { stackId, woodTempC: 18 });
  for (const [spotIndex, raw] of raws.entries()) {
    await aimAt(roundId, 0, spotIndex);
    await type(roundId, raw);
  }
  const { call, readings } = (await yard.query('rounds.get', { roundId })).probed!.assessment!;
  await yard.command('rounds.finish', { roundId });
  yard.later(DAY_MS);
  return {
    call,
    rules: [...new Set(readings.flatMap(({ suspicions }) => suspicions.map(({ rule }) => rule)))],
  };
}

const latestCall = async (id: number) => (await yard.query('boards.get', { id })).board.latest?.call;

async function edit(id: number, changed: Partial<NewBoard>): Promise<void> {
  const { board } = await yard.query('boards.get', { id });
  await yard.command('boards.edit', { id, basedOn: board.version, changed });
}

const tooDry = { call: 'probe-again', rules: ['dry-too-soon'] };

// The board: 54 mm white oak, sawn 60 days ago, with 14 and 14.5 % in shell and core.
describe('54 mm white oak, sawn 60 days ago, at 14% through', () => {
  const sawn = { rh: 0.6, endUseId: 'air-dried-stock', sawnOn: '2026-04-02' };

  test('is no more believed the second time, nor the third', async () => {
    const { stackId, boardId } = await inShed(sawn);
    for (let round = 1; round <= 3; round++)
      expect(await walk(stackId, 14, 14.5, 14.5, 14.6)).toEqual(tooDry);
    expect(await latestCall(boardId)).toBe('probe-again');
  });

  test('nor after a round of its shell, which may be so dry', async () => {
    const { stackId } = await inShed(sawn);
    const { id: roundId } = await yard.command('rounds.start', { stackId, woodTempC: 18 });
    for (const [spotIndex, raw] of [[0, 18] as const, [2, 18.4] as const]) {
      await aimAt(roundId, 0, spotIndex);
      await type(roundId, raw);
    }
    await yard.command('rounds.finish', { roundId });
    yard.later(DAY_MS);
    expect(await walk(stackId, 14, 14.5, 14.5, 14.6)).toEqual(tooDry);
  });

  test('nor after a round in which one spot was read', async () => {
    const { stackId } = await inShed(sawn);
    expect((await walk(stackId, 14)).call).toBeNull();
    expect(await walk(stackId, 14, 14.5, 14.5, 14.6)).toEqual(tooDry);
  });

  test('nor on a page of a notebook, before it is saved', async () => {
    const { stackId, boardId } = await inShed(sawn);
    const meter = (await yard.query('meters.list', {})).find(({ isTypedFrom }) => isTypedFrom)!;
    const page = {
      stackId,
      startedAt: yard.now(),
      meterId: meter.id,
      unit: 'pct' as const,
      woodTempC: 18,
      airTempC: null,
      depths: Array.from({ length: 4 }, () => 'pins' as const),
    };
    const { cells } = await yard.query('pastRounds.check', {
      ...page,
      line: { boardId, raws: [14, 14.5, 14.5, 14.6] },
    });
    const rules = new Set(cells.flatMap(({ suspicions }) => suspicions.map(({ rule }) => rule)));
    expect([...rules]).toEqual(tooDry.rules);
  });

  test('is believed once a person corrected the sawing date', async () => {
    const { stackId, boardId } = await inShed(sawn);
    await walk(stackId, 14, 14.5, 14.5, 14.6);
    await walk(stackId, 14, 14.5, 14.5, 14.6);
    await edit(boardId, { sawnOn: '2024-04-02' });
    await expect.poll(() => latestCall(boardId), { timeout: 20_000 }).toBe('ready');
    expect((await walk(stackId, 14, 14.5, 14.5, 14.6)).call).toBe('ready');
  });
});

describe('54 mm white oak, sawn two years ago, at 38% in a shed', () => {
  const sawn = { rh: 0.6, endUseId: 'air-dried-stock', sawnOn: '2024-05-01' };

  test('is not believed to be so wet', async () => {
    const { stackId, boardId } = await inShed(sawn);
    expect(await walk(stackId, 38, 38.5, 38.4, 38.6)).toMatchObject({
      call: 'probe-again',
      rules: expect.arrayContaining(['wet-too-long']),
    });
    expect(await latestCall(boardId)).toBe('probe-again');
  });

  test('is where bark is on a face', async () => {
    const { stackId } = await inShed({ ...sawn, barkSide: 'up-bark-on' });
    expect((await walk(stackId, 38, 38.5, 38.4, 38.6)).rules).not.toContain('wet-too-long');
  });
});

describe('a board without a sawing date', () => {
  const undated = { rh: 0.72, endUseId: 'furniture' };

  test('is not believed to be drier than the driest air of its place', async () => {
    const { stackId } = await inShed(undated);
    for (let round = 1; round <= 2; round++)
      expect(await walk(stackId, 6.8, 6.9, 6.7, 6.9)).toMatchObject({
        call: 'probe-again',
        rules: expect.arrayContaining(['drier-than-its-air']),
      });
  });

  test('is believed once a person said that it was kiln-dried', async () => {
    const { stackId, boardId } = await inShed(undated);
    await walk(stackId, 7.2, 7.3, 7.2, 7.1);
    await edit(boardId, { driedBy: 'kiln' });
    await expect.poll(() => latestCall(boardId), { timeout: 20_000 }).toBe('ready');
    expect((await walk(stackId, 7.2, 7.3, 7.2, 7.1)).rules).not.toContain('drier-than-its-air');
  });

  test('is compared with its earlier rounds alone once one of them was believed', async () => {
    const { stackId } = await inShed(undated);
    expect((await walk(stackId, 13.4, 13.5, 13.4, 13.6)).rules).toEqual([]);
    yard.later(300 * DAY_MS);
    expect((await walk(stackId, 9.4, 9.5, 9.4, 9.6)).rules).toEqual([]);
  });
});
