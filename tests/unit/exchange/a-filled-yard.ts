import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { openYard, type Yard } from '../../../electron/store/yard.ts';
import { unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import { isSlip } from '../../../shared-core/probing/readings/exclusion.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { onlyNamed } from '../../../shared-core/wood/species/species.ts';
import { folderWithNewYard } from '../app/new-yard.ts';

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'pintally-exchange-'));

/** An empty yard file in a folder of its own. */
export function emptyYard(): Yard {
  return openYard(join(folderWithNewYard(), 'yard.sqlite'));
}

/** One thing that a person does, by numbers that choose among what the yard has. */
export interface Step {
  what: (typeof steps)[number];
  a: number;
  b: number;
  text: string;
}

const steps = [
  'place',
  'stack',
  'board',
  'edit-board',
  'edit-place',
  'edit-stack',
  'move',
  'meter',
  'profile',
  'round',
  'read',
  'exclude',
  'move-reading',
  'correct',
  'deepen',
  'change-meter',
  'warm',
  'check',
  'test-block',
  'check-meter',
  'weigh',
  'cut',
  'species',
  'edit-species',
  'confirm',
  'print',
  'setting',
  'archive',
  'rip',
  'merge-boards',
  'undo',
] as const;

export const stepArbitrary: fc.Arbitrary<Step> = fc.record({
  what: fc.constantFrom(...steps),
  a: fc.nat(1000),
  b: fc.nat(1000),
  text: fc.string({ unit: fc.constantFrom(...'ab="\n\\é木 {}[],'), maxLength: 12 }),
});

/** With these, there is something for every step to act on. */
export const firstSteps: readonly Step[] = (
  ['place', 'place', 'stack', 'stack', 'board', 'board', 'board', 'meter', 'read', 'read', 'read'] as const
).map((what, at) => ({ what, a: at * 7, b: at * 13, text: '' }));

let count = 0;
const uniqueName = (): string => `N${++count}`;

/** Does steps on a yard, each an act; one that has nothing to act on does nothing. */
export function doSteps(yard: Yard, todo: readonly Step[], day: number): void {
  for (const [index, step] of todo.entries()) {
    const at = new Date(Date.UTC(2026, 0, 1 + day, 0, index)).toISOString();
    try {
      yard.transaction(() => {
        yard.acts.begin({
          id: crypto.randomUUID(),
          request: `test.${step.what}`,
          inputHash: '',
          at,
          who: 'test',
        });
        doStep(yard, step, at);
        yard.acts.finish(null);
      });
    } catch (error) {
      if (!(error instanceof NotUndone)) throw error;
    }
  }
}

class NotUndone extends Error {}

/** Undoes an act, or redoes it; nothing where something is in the way. */
export function undoAct(yard: Yard, id: string, at: string): void {
  const what = yard.acts.isUndone(id) ? 'redo' : 'undo';
  const { value } = yard.acts.undo(id, at, what, () => false).next();
  if (!value || !('conflict' in value || value.done === true)) throw new RangeError('It was done in parts.');
  if ('conflict' in value) throw new NotUndone();
}

export function rip(yard: Yard, boardId: number, codes: readonly string[], at: string): number[] {
  const board = yard.boards.get(boardId)!;
  const pieceIds = codes.map((code) => {
    const childId = yard.boards.add({ ...board, code, widthMm: 60, column: null }, board.placeId, at);
    yard.origins.add({ childId, parentId: boardId, how: 'ripped', at });
    return childId;
  });
  yard.boards.archive([boardId], at, { code: 'ripped', note: '' });
  return pieceIds;
}

/** Merges a record that was entered twice into the one that stays. */
export function mergeBoards(yard: Yard, keptId: number, otherId: number, at: string): void {
  yard.origins.add({ childId: keptId, parentId: otherId, how: 'merged', at });
  yard.boards.archive([otherId], at, { code: 'merged', note: '' });
}

/** Saves a reading on another board, and says on its own where it went. */
function moveReading(yard: Yard, reading: Reading, boardId: number, at: string): void {
  const { id, uuid, fromUuid } = yard.readings.saveOn(reading, { ...reading, boardId });
  yard.amendments.amendReading(id, 'movedFrom', fromUuid, at);
  yard.amendments.exclude('reading', reading.id, { code: 'moved', to: uuid }, at);
}

/** One reading of a board, all of its round, or these and those of the other board. */
function moveReadings(yard: Yard, reading: Reading, boardId: number, how: number, at: string): void {
  const { boardId: ownId, roundId } = reading;
  if (yard.origins.kept(ownId) === yard.origins.kept(boardId)) return;
  const here = (id: number) => yard.readings.takenOn(id, roundId).filter(({ excluded }) => !isSlip(excluded));
  const [own, others] = [how === 0 ? [reading] : here(ownId), how === 2 ? here(boardId) : []];
  for (const one of own) moveReading(yard, one, boardId, at);
  for (const other of others) moveReading(yard, other, ownId, at);
}

const pick = <T>(all: readonly T[], by: number): T | undefined => all[by % all.length];

function doStep(yard: Yard, { what, a, b, text }: Step, at: string): void {
  const places = yard.places.list();
  const stacks = yard.stacks.list();
  const boards = yard.boards.page({ stackId: null, search: '', offset: 0, limit: 1000 }).rows;
  const meters = yard.meters.all();
  const [place, stack, board, meter] = [pick(places, a), pick(stacks, a), pick(boards, a), pick(meters, a)];
  const air = Array.from({ length: 12 }, (_, month) => ({ tempC: (a % 30) + month / 7, rh: 0.4 }));
  const readings =
    board === undefined
      ? []
      : yard.readings.roundsOfBoard(board.id).flatMap((id) => yard.readings.ofBoard(board.id, id));
  // What is on another board now is edited there.
  const reading = pick(
    readings.filter(({ excluded }) => !isSlip(excluded)),
    b,
  );
  const roundId = board && pick(yard.readings.roundsOfBoard(board.id), b);
  switch (what) {
    case 'place':
      yard.places.add({ name: uniqueName(), kind: 'shop', air, airSource: null, airMovement: null });
      return;
    case 'stack':
      if (place === undefined) return;
      yard.stacks.add({
        name: uniqueName(),
        placeId: place.id,
        endUseId: 'furniture',
        topCover: 'covered',
        note: text,
      });
      return;
    case 'board':
      if (stack === undefined) return;
      yard.boards.add(
        {
          ...unknownOfBoard,
          code: uniqueName(),
          stackId: stack.id,
          speciesId: pick(yard.species.list(), b)!.id,
          thicknessMm: 20 + (b % 7) / 3,
          thicknessQuarters: null,
          note: text,
        },
        stack.placeId,
        at,
      );
      return;
    case 'edit-board':
      if (board)
        yard.boards.edit({
          id: board.id,
          basedOn: board.version,
          changed: b % 2 ? { note: text } : { widthMm: 100 + b },
        });
      return;
    case 'edit-place':
      if (place)
        yard.places.edit({
          id: place.id,
          basedOn: place.version,
          changed: b % 2 ? { air } : { kind: 'open-shed' },
        });
      return;
    case 'edit-stack':
      if (stack) yard.stacks.edit({ id: stack.id, basedOn: stack.version, changed: { note: text } });
      return;
    case 'move':
      if (board && place)
        yard.moves.add({ boardId: board.id, placeId: pick(places, b)!.id, since: at, datedBy: 'time' });
      return;
    case 'meter':
      yard.meters.addTyped(uniqueName(), unknownProfile, at);
      return;
    case 'profile':
      if (meter) yard.meters.setProfile(meter.id, { ...unknownProfile, sdPct: 0.5 + (b % 30) / 10 }, at);
      return;
    case 'test-block':
      if (meter) {
        const tenths = { expected: 10 + (a % 40) / 10, tolerance: 0.1 + (b % 9) / 10 };
        yard.meterChecks.addBlock({
          ...tenths,
          meterId: meter.id,
          name: uniqueName(),
          unit: 'pct',
          checkEvery: 'day',
        });
      }
      return;
    case 'check-meter': {
      const tested = pick(yard.meterChecks.blocks(), a);
      if (tested === undefined) return;
      const { id: blockId, expected: right, tolerance, meterId } = tested;
      const shown = 8 + (b % 80) / 10;
      const checkId = yard.meterChecks.addCheck(
        { blockId, right, tolerance, shown, tempC: b % 30, at },
        meterId,
      );
      if (b % 3 === 0) yard.meterChecks.correctBy(checkId, b % 2 === 0, at);
      if (b % 3 === 0) yard.meters.setOff(meterId, shown - right, at);
      if (b % 5 === 0) yard.meterChecks.excludeCheck(checkId, b % 2 ? null : { code: 'not-on-block' }, at);
      return;
    }
    case 'round':
      if (stack) yard.rounds.add({ stackId: stack.id, startedAt: at, datedBy: 'clock' });
      return;
    case 'read': {
      if (board === undefined) return;
      const id = roundId ?? yard.rounds.add({ stackId: board.stackId, startedAt: at, datedBy: 'clock' });
      yard.readings.save({
        roundId: id,
        boardId: board.id,
        spotIndex: b % 4,
        spot: { depth: b % 2 ? 'shell' : 'core', depthMm: (b % 9) + 0.5, fromEndMm: null, face: 'face' },
        raw: 6 + (b % 100) / 10,
        unit: 'pct',
        how: b % 3 ? 'typed' : 'settled',
        settled: b % 3 ? null : true,
        woodTempC: b % 5 ? 20 : null,
        meterId: pick(meters, b)?.id ?? null,
        takenAt: at,
      });
      return;
    }
    case 'exclude':
      if (reading) yard.amendments.exclude('reading', reading.id, b % 2 ? { text } : null, at);
      return;
    case 'move-reading': {
      const other = pick(boards, a + b);
      if (reading && other) moveReadings(yard, reading, other.id, b % 3, at);
      return;
    }
    case 'correct':
      if (reading) yard.amendments.amendReading(reading.id, 'raw', 6 + (a % 50) / 10, at);
      return;
    case 'deepen':
      if (reading) yard.amendments.amendReading(reading.id, 'depthMm', 1 + (a % 20), at);
      return;
    case 'change-meter':
      if (reading && meter)
        yard.amendments.amendReading(reading.id, 'meterProfileId', yard.meters.profileIdOf(meter.id), at);
      return;
    case 'warm':
      if (board && roundId !== undefined)
        yard.woodTemperatures.give({ roundId, boardId: b % 2 ? board.id : null, tempC: a % 30, givenAt: at });
      return;
    case 'check': {
      const checked = pick(yard.species.list(), a)!;
      yard.ovenChecks.add(
        {
          speciesId: checked.id,
          meterId: meter?.id ?? null,
          piece: 'P1',
          readings: [8.1, 9],
          unit: 'pct',
          woodTempC: null,
          wetGrams: 100,
          balanceGrams: 0.1,
          rule: 'EN 13183-1',
          note: text,
        },
        at,
      );
      return;
    }
    case 'weigh':
      if (board) yard.samples.weigh(board.id, 1 + b / 10, at);
      return;
    case 'cut':
      if (board) yard.samples.cut({ boardId: board.id, boardKg: 5, wetGrams: [100, 101 + b], at });
      return;
    case 'species':
      yard.species.add({ ...onlyNamed, id: uniqueName().toLowerCase(), name: uniqueName(), group: 'Own' });
      return;
    case 'edit-species': {
      const edited = pick(yard.species.list(), a)!;
      yard.species.edit({ id: edited.id, basedOn: edited.version, changed: { note: text } });
      return;
    }
    case 'confirm':
      if (board) yard.confirmedSpecies.confirm(board.id, at);
      return;
    case 'archive':
      if (board) yard.boards.archive([board.id], at, { code: b % 2 ? 'deleted' : 'sold', note: '' });
      return;
    case 'rip':
      if (board) rip(yard, board.id, [uniqueName(), uniqueName()], at);
      return;
    case 'merge-boards': {
      const kept = pick(boards, b);
      if (board === undefined || kept === undefined || board.id === kept.id) return;
      const isPiece = (id: number, of: number) => yard.origins.below(of).includes(id);
      if (!isPiece(board.id, kept.id) && !isPiece(kept.id, board.id))
        mergeBoards(yard, kept.id, board.id, at);
      return;
    }
    case 'undo': {
      const acts = yard.acts.page(null, 30, null).filter(({ request }) => request !== 'test.undo');
      const act = pick(acts, a);
      if (act) undoAct(yard, act.id, at);
      return;
    }
    case 'print':
      if (board) yard.labelPrints.add({ boardId: board.id, contentHash: `hash-${b}`, printedAt: at });
      return;
    default:
      if (meter && b % 2) yard.settings.put('typing-meter', { meterId: meter.id });
      else yard.settings.put('settings', { units: a % 2 ? 'metric' : 'imperial' });
  }
}
