import { existsSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import scenario from '../../../seeds/demo-yard.json' with { type: 'json' };
import germanNames from '../../../seeds/demo-yard-german.json' with { type: 'json' };
import { newOvenCheckSchema } from '../../../shared-core/contract/oven-checks.ts';
import { newBoardSchema, newPlaceSchema, newStackSchema } from '../../../shared-core/contract/yard.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { usualBasis } from '../../../shared-core/probing/readings/plan-basis.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import type { Language } from '../../../shared-core/words/languages.ts';
import { syncFile, syncFolder } from '../../store/durable-files.ts';
import { openYard, type Yard } from '../../store/yard.ts';
import { lockYard } from '../../store/yard-lock.ts';
import { typeFrom } from '../meter/meters.ts';

/** How much two spots of one board differ in the scenario, % as the meter shows it. */
const BETWEEN_SPOTS_PCT = 0.3;

const unfinishedOf = (file: string): string => `${file}-unfinished`;

/**
 * Makes the file of the demo yard, where there is none. It is filled under another name: whenever this process ends,
 * the demo yard is there whole or not at all.
 */
export function makeDemoYard(file: string, now: string, language: Language = 'en'): void {
  if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > 0) return;
  const filled = unfinishedOf(file);
  removeYardFiles(filled);
  const yard = openYard(filled);
  try {
    yard.species.bringUpToDate(builtInSpecies);
    yard.endUses.bringUpToDate(builtInEndUses);
    fillDemoYard(yard, now, language === 'de' ? germanScenario() : scenario);
  } finally {
    yard.close();
  }
  syncFile(filled);
  removeYardFiles(file);
  renameSync(filled, file);
  syncFolder(dirname(file));
}

/** Removes what a demo yard left that could not be made, as on a full disk. */
export function forgetUnfinishedDemo(file: string, now: string): void {
  if (!existsSync(unfinishedOf(file))) return;
  try {
    const lock = lockYard(file, now);
    removeYardFiles(unfinishedOf(file));
    lock.release();
  } catch {
    // Another Pintally makes it just now, or the disk does not let it be removed: it is in nobody's way.
  }
}

/** Deletes a yard file with the files that SQLite keeps beside it: first those, which no new file may find there. */
export function removeYardFiles(file: string): void {
  for (const suffix of ['-wal', '-shm', '-journal', '']) rmSync(file + suffix, { force: true });
}

type Scenario = typeof scenario;

const inGerman = new Map(Object.entries(germanNames));

/** The scenario with its names and notes in German: a person would have typed them, so no catalog has them. */
const germanScenario = (): Scenario =>
  JSON.parse(JSON.stringify(scenario), (_key, value) => inGerman.get(value) ?? value);

/**
 * Fills a new yard with the demo scenario, dated back from now, as if its owner had typed every reading.
 * Findings are made when the yard is opened, by the same rules as anyone's.
 */
function fillDemoYard(yard: Yard, now: string, scenario: Scenario): void {
  const daysAgo = (days: number): string => new Date(Date.parse(now) - days * DAY_MS).toISOString();
  yard.transaction(() => {
    const placeIds = new Map<string, number>();
    for (const { name, kind, air } of scenario.places) {
      const place = newPlaceSchema.parse({ name, kind, air: air.map(([tempC, rh]) => ({ tempC, rh })) });
      placeIds.set(name, yard.places.add(place));
    }
    const meterId = addMeter(yard, now, scenario.meter);
    for (const stack of scenario.stacks) addStack(yard, stack, placeIds, meterId, daysAgo);
    for (const checks of scenario.ovenChecks) addOvenChecks(yard, checks, meterId, daysAgo);
  });
}

/** The meter that all values were typed from: its pins reach the middle of every board. */
function addMeter(yard: Yard, now: string, { name, pinsMm }: Scenario['meter']): number {
  const pins = { lengthMm: pinsMm, insulated: true };
  const meterId = yard.meters.addTyped(name, { ...unknownProfile, scale: { kind: 'usual' }, pins }, now);
  typeFrom(yard, meterId);
  return meterId;
}

/** A stack of the scenario; one that was moved says where from and when. */
type ScenarioStack = Scenario['stacks'][number] & { cameFrom?: { place: string; daysAgo: number } };

/** A board of the scenario; one that was sawn later than its stack says when. */
type ScenarioBoard = ScenarioStack['boards']['each'][number] & { sawnDaysAgo?: number };

function addStack(
  yard: Yard,
  stack: ScenarioStack,
  placeIds: ReadonlyMap<string, number>,
  meterId: number,
  daysAgo: (days: number) => string,
): void {
  const { columns, each, ...common } = stack.boards;
  const { name, place, cameFrom, endUse, note, sawnDaysAgo } = stack;
  const parsed = newStackSchema.parse({
    name,
    placeId: placeIds.get(place),
    endUseId: endUse,
    topCover: 'covered',
    note,
  });
  const stackId = yard.stacks.add(parsed);
  const boards = each.map((own: ScenarioBoard, index) => {
    const ownSawnDaysAgo = own.sawnDaysAgo ?? sawnDaysAgo;
    const board = newBoardSchema.parse({
      ringRadiusMm: null,
      barkSide: 'unknown',
      barkOffOn: null,
      ...common,
      ...own,
      stackId,
      sawnOn: daysAgo(ownSawnDaysAgo).slice(0, 10),
      layer: Math.floor(index / columns) + 1,
      column: (index % columns) + 1,
      note: '',
    });
    const firstId = placeIds.get(cameFrom?.place ?? place) ?? parsed.placeId;
    const id = yard.boards.add(board, firstId, daysAgo(ownSawnDaysAgo));
    if (cameFrom)
      yard.moves.add({
        boardId: id,
        placeId: parsed.placeId,
        since: daysAgo(cameFrom.daysAgo),
        datedBy: 'time',
      });
    return { ...board, id };
  });

  const pins = yard.meters.get(meterId)?.profile?.pins ?? null;
  for (const { daysAgo: days, woodTempC, shellCore } of stack.rounds) {
    const takenAt = daysAgo(days);
    const roundId = yard.rounds.add({ stackId, startedAt: takenAt, datedBy: 'clock' });
    yard.woodTemperatures.give({ roundId, boardId: null, tempC: woodTempC, givenAt: takenAt });
    for (const [index, board] of boards.entries()) {
      const [shell = 0, core = 0] = shellCore[index] ?? [];
      const planBasis = usualBasis(board.thicknessMm, pins);
      yard.spotPlans.give({ roundId, boardId: board.id, basis: planBasis, givenAt: takenAt });
      for (const [spotIndex, { spot }] of planSpots({ ...board, planBasis }).plan.entries()) {
        const shown = spot.depth === 'shell' ? shell : core;
        yard.readings.save({
          roundId,
          boardId: board.id,
          spotIndex,
          spot,
          raw: Math.round((shown + (spotIndex < 2 ? 0 : BETWEEN_SPOTS_PCT)) * 10) / 10,
          unit: 'pct',
          how: 'typed',
          settled: null,
          woodTempC,
          meterId,
          takenAt,
        });
      }
    }
    yard.rounds.finish(roundId, takenAt);
  }
}

function addOvenChecks(
  yard: Yard,
  { daysAgo: days, pieces, ...common }: Scenario['ovenChecks'][number],
  meterId: number,
  daysAgo: (days: number) => string,
): void {
  for (const { weights, ...piece } of pieces) {
    const check = newOvenCheckSchema.parse({ ...common, ...piece, meterId, unit: 'pct', note: '' });
    const checkId = yard.ovenChecks.add(check, daysAgo(days));
    for (const [hours = 0, grams = 0] of weights)
      yard.ovenChecks.weigh(checkId, grams, daysAgo(days - hours / 24));
  }
}
