import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test, vi } from 'vitest';
import type { OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { HOUR_MS } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';
import { type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const SPECIES = 'walnut-black';

const check = (more: Partial<RequestInput<'ovenChecks.add'>> = {}): RequestInput<'ovenChecks.add'> => ({
  speciesId: SPECIES,
  meterId: null,
  piece: 'A1',
  readings: [12.4, 12.6],
  unit: 'pct',
  woodTempC: 20,
  wetGrams: 110,
  balanceGrams: 0.01,
  rule: 'ASTM D4442',
  note: '',
  ...more,
});

const idOfPiece = (fits: OwnFit[], piece: string): number =>
  fits.flatMap((fit) => fit.checks).find((each) => each.piece === piece)!.id;
const pieceOf = (fits: OwnFit[], piece: string) => {
  const checks = fits.flatMap((fit) => fit.checks);
  expectWhole([...fits, ...checks].map(({ status }) => status));
  return checks.find((each) => each.piece === piece)!;
};

/** Puts the piece on the balance so many hours from now. */
async function weighAfter(hours: number, checkId: number, grams: number): Promise<OwnFit[]> {
  yard.later(hours * HOUR_MS);
  return yard.command('ovenChecks.weigh', { checkId, grams, at: yard.now() });
}

/** A piece that the meter read and that is dry in the end: 100 g without its water. */
async function dryPiece(piece: string, reading: number, mcPct: number): Promise<OwnFit[]> {
  const added = await yard.command(
    'ovenChecks.add',
    check({ piece, readings: [reading], wetGrams: 100 + mcPct }),
  );
  const checkId = idOfPiece(added, piece);
  await weighAfter(24, checkId, 100.01);
  return weighAfter(3, checkId, 100);
}

/** Five pieces for which the meter shows 0.8 MC + 1, give or take. */
async function fiveDryPieces(): Promise<OwnFit[]> {
  let fits: OwnFit[] = [];
  for (const [piece, mcPct, scatter] of [
    ['A1', 7, 0.05],
    ['A2', 9, -0.05],
    ['A3', 12, 0.05],
    ['A4', 15, -0.05],
    ['A5', 19, 0.02],
  ] as const) {
    fits = await dryPiece(piece, 0.8 * mcPct + 1 + scatter, mcPct);
  }
  return fits;
}

describe('one piece in the oven', () => {
  test('is dry by the end condition of the standard, and not before', async () => {
    const checkId = idOfPiece(await yard.command('ovenChecks.add', check()), 'A1');
    expect(pieceOf(await yard.query('ovenChecks.ofSpecies', { speciesId: SPECIES }), 'A1')).toMatchObject({
      ovenDryMcPct: null,
      dry: false,
    });
    let piece = pieceOf(await weighAfter(20, checkId, 100.4), 'A1');
    expect(piece.dry).toBe(false);
    expect(piece.status).toEqual(
      message('oven-check.weigh-again', { ovenDryPct: piece.ovenDryMcPct!, hours: 3 }),
    );
    // ASTM D4442: dry when the loss in 3 h is at most twice what the balance can tell (from memory).
    piece = pieceOf(await weighAfter(3, checkId, 100.05), 'A1');
    expect(piece.dry).toBe(false);
    expect(piece.status).toEqual(
      message('oven-check.not-dry', {
        ovenDryPct: piece.ovenDryMcPct!,
        hours: 3,
        changeGrams: expect.closeTo(0.35, 9),
        allowedGrams: expect.closeTo(0.02, 9),
        ruleName: 'ASTM D4442',
      }),
    );
    piece = pieceOf(await weighAfter(3, checkId, 100.03), 'A1');
    expect(piece.dry).toBe(true);
    // (110 - 100.03) / 100.03, by definition (ASTM D4442).
    expect(piece.ovenDryMcPct).toBeCloseTo(9.967, 3);
    expect(inEnglish(piece.status)).toMatch(/^Dry: its MC was 10\.0%/);
  });

  test('read with a meter that corrects for temperature itself is not corrected for it again', async () => {
    const profile = { ...unknownProfile, compensatesTemp: true };
    await yard.command('meters.add', { name: 'Old one', profile, roundId: null });
    const { id: meterId } = (await yard.query('meters.list', {})).at(-1)!;
    const cold = { piece: 'cold', woodTempC: 5, meterId };
    await yard.command('ovenChecks.add', check({ piece: 'warm', woodTempC: 21, meterId }));
    const fits = await yard.command('ovenChecks.add', check(cold));
    const [warmPiece, coldPiece] = ['warm', 'cold'].map((piece) => pieceOf(fits, piece));
    // 12.4 and 12.6 % at any temperature.
    expect(coldPiece!.readingPct).toBeCloseTo(12.5, 9);
    expect(coldPiece!.publishedMcPct).toBeCloseTo(warmPiece!.publishedMcPct!, 1);
  });

  test('keeps a mistyped weight on record when it is excluded, and includes it again', async () => {
    const checkId = idOfPiece(await yard.command('ovenChecks.add', check()), 'A1');
    await weighAfter(20, checkId, 100);
    const wrong = pieceOf(await weighAfter(3, checkId, 10), 'A1').weights.at(-1)!;
    const after = pieceOf(
      await yard.command('ovenChecks.exclude', {
        checkId,
        weightId: wrong.id,
        why: { text: 'a digit was left out' },
      }),
      'A1',
    );
    expect(after.weights.map(({ grams, excluded }) => ({ grams, excluded }))).toEqual([
      { grams: 100, excluded: null },
      { grams: 10, excluded: { text: 'a digit was left out' } },
    ]);
    expect(after.ovenDryMcPct).toBeCloseTo(10, 9);
    const back = pieceOf(await yard.command('ovenChecks.include', { checkId, weightId: wrong.id }), 'A1');
    expect(back.ovenDryMcPct).toBeCloseTo(1000, 9);
  });

  test('weighed twice at one time, as where an excluded weight is included again: the newer holds', async () => {
    const checkId = idOfPiece(await yard.command('ovenChecks.add', check()), 'A1');
    const first = pieceOf(await weighAfter(20, checkId, 101), 'A1').weights[0]!;
    await yard.command('ovenChecks.exclude', { checkId, weightId: first.id, why: { code: 'wrong-piece' } });
    await weighAfter(0, checkId, 100);
    const both = pieceOf(await yard.command('ovenChecks.include', { checkId, weightId: first.id }), 'A1');
    expect(both.weights.map(({ excluded }) => excluded)).toEqual([null, null]);
    expect(both.ovenDryMcPct).toBeCloseTo(10, 9);
  });

  test('is on disk at once, and what was measured can never be changed or deleted', async () => {
    const checkId = idOfPiece(await yard.command('ovenChecks.add', check()), 'A1');
    await weighAfter(20, checkId, 100);
    const disk = new Database(join(yard.dataDir, 'yard.sqlite'));
    expect(disk.prepare('SELECT grams FROM oven_weight').all()).toEqual([{ grams: 100 }]);
    for (const sql of [
      'UPDATE oven_weight SET grams = 99',
      'DELETE FROM oven_weight',
      'UPDATE oven_check SET wet_grams = 99',
      'DELETE FROM oven_check',
    ]) {
      expect(() => disk.exec(sql)).toThrow(/never/);
    }
    disk.close();
  });

  test('refuses what cannot be, with a sentence, and keeps what it had', async () => {
    const checkId = idOfPiece(await yard.command('ovenChecks.add', check()), 'A1');
    await weighAfter(20, checkId, 100);
    const at = yard.now();
    const weigh = (more: object) => yard.refusal('ovenChecks.weigh', { checkId, grams: 99, at, ...more });
    yard.later(1000);
    expect(await weigh({ grams: 120, at: yard.now() })).toMatch(/120 g is more than 110 g/);
    expect(await weigh({ at: '2027-01-01T00:00:00.000Z' })).toMatch(/in the future/);
    expect(await weigh({})).toMatch(/already has a weight for that time/);
    expect(await weigh({ grams: -1 })).toMatch(/above 0/);
    expect(await weigh({ checkId: 999 })).toMatch(/not in this yard/);
    expect(await yard.refusal('ovenChecks.add', check({ readings: [-3] }))).toMatch(/cannot be a reading/);
    expect(await yard.refusal('ovenChecks.add', check({ readings: [] }))).toMatch(/at least one reading/);
    expect(await yard.refusal('ovenChecks.add', check({ speciesId: 'no-such' }))).toMatch(
      /species is not in this yard/,
    );
    const { weights } = pieceOf(await yard.query('ovenChecks.ofSpecies', { speciesId: SPECIES }), 'A1');
    expect(weights.map(({ grams }) => grams)).toEqual([100]);
  });
});

describe('the fit to a species’ checks', () => {
  test('waits for enough dry pieces and says how many there are', async () => {
    await dryPiece('A1', 10, 11);
    const [fit] = await yard.command('ovenChecks.add', check({ piece: 'A2' }));
    expect(fit).toMatchObject({ fit: null, inUse: false, applied: false });
    expect(fit!.status).toEqual(message('own-fit.too-few-dry-yet', { dry: 1, least: 3, drying: 1 }));
    expect(
      await yard.refusal('ovenChecks.useFit', { speciesId: SPECIES, meterId: null, inUse: true }),
    ).toMatch(/cannot be used yet.*corrected as before/);
  });

  test('finds the line that the meter follows, with the error of each piece left out', async () => {
    const [own] = await fiveDryPieces();
    // The line that the readings were made with, found again within their scatter.
    expect(own!.fit!.a).toBeCloseTo(0.8, 1);
    expect(own!.fit!.b).toBeCloseTo(1, 0);
    expect(own!.fit).toMatchObject({ model: 'line', worthUsing: true });
    expect(own!.fit!.leftOut).toHaveLength(5);
    expect(own!.fit!.standardErrorPct).toBeLessThan(0.3);
    expect(own!.published.length).toBeGreaterThan(10);
  });

  test('a mistyped weight that no meter could match is named as the problem', async () => {
    const fits = await fiveDryPieces();
    const checkId = idOfPiece(fits, 'A3');
    await weighAfter(3, checkId, 10);
    const [own] = await weighAfter(3, checkId, 10);
    expect(own).toMatchObject({ fit: null });
    // (100 + 12 - 10) / 10, by definition.
    expect(own!.status).toEqual(message('own-fit.impossible', { mcPct: expect.closeTo(1020, 6) }));
  });

  test('leaves out an excluded check', async () => {
    const fits = await fiveDryPieces();
    const checkId = idOfPiece(fits, 'A3');
    const [own] = await yard.command('ovenChecks.exclude', {
      checkId,
      weightId: null,
      why: { text: 'it had a knot' },
    });
    expect(own!.fit!.leftOut.map((each) => each.checkId)).not.toContain(checkId);
    expect(pieceOf([own!], 'A3')).toMatchObject({ excluded: { text: 'it had a knot' }, dry: true });
    const [back] = await yard.command('ovenChecks.include', { checkId, weightId: null });
    expect(back!.fit!.leftOut).toHaveLength(5);
  });

  test('corrects the species’ boards once it is put to use, earlier rounds too, and stops when told', async () => {
    const roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
    await type(roundId, 10.6);
    const boardId = yard.boards[0]!.id;
    const reading = async () => (await yard.query('boards.get', { id: boardId })).readings[0]!.corrected;
    const listed = async () => (await yard.query('boards.get', { id: boardId })).findings[0]!.averagePct!;
    const before = await reading();
    const listedBefore = await listed();
    expect(before.steps.map(({ step }) => step)).toContain('species-curve');

    const [own] = await fiveDryPieces();
    // Not put to use, they only move the published correction.
    const moved = await reading();
    expect(moved.steps.map(({ step }) => step)).toEqual(['temperature', 'species-curve', 'own-checks']);
    const [used] = await yard.command('ovenChecks.useFit', {
      speciesId: SPECIES,
      meterId: null,
      inUse: true,
    });
    expect(used).toMatchObject({ inUse: true, applied: true });
    const corrected = await reading();
    expect(corrected.steps.map(({ step }) => step)).toContain('own-calibration');
    // At the basis temperature the line stands alone: MC = (M - b) / a.
    expect(corrected.mcPct).toBeCloseTo((10.6 - own!.fit!.b) / own!.fit!.a, 0);
    expect(corrected.mcPct).not.toBeCloseTo(before.mcPct!, 1);
    expect(corrected.standardUncertaintyPct).toBeLessThan(before.standardUncertaintyPct!);
    await vi.waitFor(async () => expect(await listed()).not.toBeCloseTo(listedBefore, 2), 5000);

    const listedInUse = await listed();
    await yard.command('ovenChecks.useFit', { speciesId: SPECIES, meterId: null, inUse: false });
    expect(await reading()).toEqual(moved);
    await vi.waitFor(async () => expect(await listed()).not.toBeCloseTo(listedInUse, 2), 5000);
  });

  test('is not applied as long as it is not worth using, however it was chosen', async () => {
    const fits = await fiveDryPieces();
    await yard.command('ovenChecks.useFit', { speciesId: SPECIES, meterId: null, inUse: true });
    const [own] = await yard.command('ovenChecks.exclude', {
      checkId: idOfPiece(fits, 'A1'),
      weightId: null,
      why: { text: 'read while frozen' },
    });
    expect(own).toMatchObject({ inUse: true, applied: false });
    expect(own!.status).toEqual(message('own-fit.too-few', { pieces: 4, least: 5 }));
  });

  test('of one meter says nothing of another', async () => {
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    const { meterId } = await yard.query('meter.state', {});
    await yard.command('meter.disconnect', {});
    await fiveDryPieces();
    const fits = await yard.command('ovenChecks.add', check({ piece: 'B1', meterId }));
    expect(fits.map((fit) => ({ meterName: fit.meterName, pieces: fit.checks.length }))).toEqual([
      { meterName: 'Hand-held', pieces: 1 },
      { meterName: null, pieces: 5 },
    ]);
    await yard.command('ovenChecks.useFit', { speciesId: SPECIES, meterId: null, inUse: true });
    const roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
    await type(roundId, 10.6);
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    yard.meter.show(10.6, 3);
    const { readings } = (await yard.query('rounds.get', { roundId })).probed!.assessment!;
    expect(
      readings.map(({ how, corrected }) => [
        how,
        corrected.steps.some(({ step }) => step === 'own-calibration'),
      ]),
    ).toEqual([
      ['typed', true],
      ['settled', false],
    ]);
  });
});
