import { describe, expect, test, vi } from 'vitest';
import type { OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import { DAY_MS, HOUR_MS } from '../../../shared-core/time.ts';
import { type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** A piece that typed readings were taken of, and that came to this moisture content in the oven. */
async function dryPiece(piece: string, readings: number[], mcPct: number, speciesId = 'walnut-black') {
  const added = await yard.command('ovenChecks.add', {
    speciesId,
    meterId: null,
    piece,
    readings,
    unit: 'pct',
    woodTempC: 22,
    wetGrams: 100 + mcPct,
    balanceGrams: 0.01,
    rule: 'ASTM D4442',
    note: '',
  });
  const checkId = added.flatMap((fit) => fit.checks).find((each) => each.piece === piece)!.id;
  let fits: OwnFit[] = [];
  for (const [hours, grams] of [
    [24, 100.01],
    [3, 100],
  ] as const) {
    yard.later(hours * HOUR_MS);
    fits = await yard.command('ovenChecks.weigh', { checkId, grams, at: yard.now() });
  }
  return { checkId, fits };
}

/** One board of the stack, with a reading of 10.6 % in each of its spots. */
async function readBoard() {
  const round = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 22 });
  await type(round.id, 10.6);
  const boardId = yard.boards[0]!.id;
  return {
    roundId: round.id,
    corrected: async () => (await yard.query('boards.get', { id: boardId })).readings[0]!.corrected,
    listedPct: async () => (await yard.query('boards.get', { id: boardId })).findings[0]!.averagePct!,
  };
}
const stepsOf = ({ steps }: { steps: { step: string }[] }) => steps.map(({ step }) => step);

describe('a dried piece teaches of the meter it was read with', () => {
  test('readings move toward it, part of the way, as a step of its own, and are surer', async () => {
    const { corrected, listedPct } = await readBoard();
    const [before, listedBefore] = [await corrected(), await listedPct()];
    expect(stepsOf(before)).not.toContain('own-checks');

    // Read as 12.6 % on the average; in the oven it was 10 %.
    await dryPiece('A1', [12.5, 12.7], 10);
    const after = await corrected();
    expect(stepsOf(after).at(-1)).toBe('own-checks');
    expect(after.steps.at(-1)!.pct).toBe(after.mcPct);
    expect(before.mcPct! - after.mcPct!).toBeGreaterThan(0.5);
    expect(before.mcPct! - after.mcPct!).toBeLessThan(2.6);
    expect(after.standardUncertaintyPct!).toBeLessThan(before.standardUncertaintyPct!);
    await vi.waitFor(async () => expect(await listedPct()).toBeLessThan(listedBefore - 0.4), 5000);
  });

  test('excluded, it teaches nothing', async () => {
    const { corrected, listedPct } = await readBoard();
    const [before, listedBefore] = [await corrected(), await listedPct()];
    const { checkId } = await dryPiece('A1', [12.5, 12.7], 10);
    await yard.command('ovenChecks.exclude', { checkId, weightId: null, why: { text: 'a knot' } });
    expect(await corrected()).toEqual(before);
    await vi.waitFor(async () => expect(await listedPct()).toBeCloseTo(listedBefore, 9), 5000);
  });

  test('still in the oven it teaches nothing', async () => {
    const { corrected } = await readBoard();
    const before = await corrected();
    await yard.command('ovenChecks.add', {
      speciesId: 'walnut-black',
      meterId: null,
      piece: 'A1',
      readings: [12.6],
      unit: 'pct',
      woodTempC: 22,
      wetGrams: 110,
      balanceGrams: 0.01,
      rule: 'ASTM D4442',
      note: '',
    });
    expect(await corrected()).toEqual(before);
  });

  test('a piece of another species moves readings with the same meter less', async () => {
    const { corrected } = await readBoard();
    const before = await corrected();
    const other = await dryPiece('B1', [12.5, 12.7], 10, 'oak-northern-red');
    const byOak = before.mcPct! - (await corrected()).mcPct!;
    await yard.command('ovenChecks.exclude', {
      checkId: other.checkId,
      weightId: null,
      why: { text: 'a knot' },
    });
    await dryPiece('A1', [12.5, 12.7], 10);
    const byWalnut = before.mcPct! - (await corrected()).mcPct!;
    expect(byOak).toBeGreaterThan(0.2);
    expect(byWalnut).toBeGreaterThan(byOak + 0.1);
  });

  test('the line that a person chose takes its place: never both', async () => {
    const { corrected } = await readBoard();
    let fits: OwnFit[] = [];
    for (const [piece, mcPct] of [
      ['A1', 7],
      ['A2', 9],
      ['A3', 12],
      ['A4', 15],
      ['A5', 19],
    ] as const) {
      ({ fits } = await dryPiece(piece, [0.8 * mcPct + 1], mcPct));
    }
    expect(stepsOf(await corrected())).toContain('own-checks');
    expect(fits[0]!.fit!.worthUsing).toBe(true);
    await yard.command('ovenChecks.useFit', { speciesId: 'walnut-black', meterId: null, inUse: true });
    const byLine = stepsOf(await corrected());
    expect(byLine).toContain('own-calibration');
    expect(byLine).not.toContain('own-checks');
  });
});

test('a sample board that was weighed and read teaches once its round is over', async () => {
  const { corrected, roundId } = await readBoard();
  const before = await corrected();
  const sampleId = yard.boards[1]!.id;
  await yard.command('rounds.aim', { roundId, boardId: sampleId, spotIndex: 0 });
  for (const raw of [10.6, 10.8, 10.7, 10.9]) await type(roundId, raw);

  // Its sections say 8 %: (108 - 100) / 100.
  const wet = await yard.command('samples.cut', {
    boardId: sampleId,
    boardKg: 5,
    wetGrams: [108, 107.8],
    at: yard.now(),
  });
  yard.later(DAY_MS);
  for (const { id } of wet.cuts[0]!.sections) {
    await yard.command('samples.drySection', { sectionId: id, grams: 100, at: yard.now() });
  }
  expect(await corrected()).toEqual(before);

  await yard.command('rounds.finish', { roundId });
  const after = await corrected();
  expect(stepsOf(after).at(-1)).toBe('own-checks');
  expect(before.mcPct! - after.mcPct!).toBeGreaterThan(0.3);
});
