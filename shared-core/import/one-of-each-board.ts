import { type ImportChoices, nameKey } from '../contract/import.ts';
import { MOST_NOTE_LETTERS } from '../contract/yard.ts';
import { message, thicknessOf } from '../words/message.ts';
import type {
  BoardDay,
  BoardsOfTable,
  BoardToAdd,
  KnownBoard,
  KnownYard,
  RowOfBoard,
} from './boards-of-table.ts';
import type { Rows } from './rows.ts';
import { nameOfSpecies } from './species-named.ts';

/** The rows of each board as one: what is given once holds for all of them. */
export function oneOfEachBoard(
  byCode: ReadonlyMap<string, readonly RowOfBoard[]>,
  rows: Rows,
  choices: ImportChoices,
  yard: KnownYard,
): Omit<BoardsOfTable, 'alike' | 'otherIds' | 'withoutNumber' | 'firstRows'> {
  const boards: BoardToAdd[] = [];
  const days: BoardDay[] = [];
  let known = 0;
  const left: string[] = [];
  const cut: string[] = [];
  let otherInYard = 0;
  let inTwoStacks = 0;
  for (const [code, all] of byCode) {
    const inYard = yard.board(code);
    const boardId = inYard?.id ?? null;
    const stackNames = new Set(
      all.flatMap(({ stackName }) => (stackName === null ? [] : nameKey(stackName))),
    );
    const others = inYard ? all.filter((facts) => isOther(facts, inYard)) : [];
    if (others.length > 0) otherInYard++;
    if (inYard && !choices.areInYard) for (const facts of others) refuseOther(facts, inYard, rows, yard);
    const ofKnown = choices.areInYard ? all : all.filter((facts) => !others.includes(facts));
    const alike = inYard ? ofKnown : all.filter((facts) => !conflicts(facts, all, rows));
    const group = stackNames.size > 1 ? inOneStackADay(alike, rows) : alike;
    const first = <T>(pick: (facts: RowOfBoard) => T | null): T | null =>
      group.map(pick).find((value) => value !== null) ?? null;
    if (group.length === 0) continue;
    const ofBoard = daysOf(code, boardId, group);
    if (inYard) {
      known++;
      if (inYard.leftOn !== null) (inYard.isCut ? cut : left).push(code);
      days.push(...ofBoard);
      continue;
    }
    const speciesId = first(({ speciesId }) => speciesId) ?? choices.speciesId;
    const thickness =
      first(({ thickness }) => thickness) ??
      (choices.thicknessMm === null
        ? null
        : { mm: choices.thicknessMm, quarters: choices.thicknessQuarters });
    const stackName = first(({ stackName }) => stackName) ?? choices.stackName;
    const missing =
      (speciesId === null && message('import.no-species')) ||
      (thickness === null && message('import.no-thickness')) ||
      (stackName === null && message('import.no-stack'));
    if (missing || speciesId === null || thickness === null || stackName === null) {
      for (const { row } of group) rows.refuse(row, null, missing || message('import.no-species'));
      continue;
    }
    if (stackNames.size > 1) inTwoStacks++;
    const notes = [...new Set(group.map(({ note }) => note).filter((note) => note !== ''))].join('\n');
    if (notes.length > MOST_NOTE_LETTERS) {
      const tooLong = message('import.too-long', { mostLetters: MOST_NOTE_LETTERS });
      for (const { row } of group) rows.refuse(row, rows.columnOf('note'), tooLong);
      continue;
    }
    boards.push({
      code,
      speciesId,
      thicknessMm: thickness.mm,
      thicknessQuarters: thickness.quarters,
      widthMm: first(({ widthMm }) => widthMm),
      lengthMm: first(({ lengthMm }) => lengthMm),
      sawnOn: first(({ sawnOn }) => sawnOn),
      log: first(({ log }) => log) ?? '',
      layer: first(({ layer }) => layer),
      note: notes,
      stackName: yard.stacks.get(nameKey(stackName)) ?? stackName,
      placeName: first(({ placeName }) => placeName),
      firstReadOn: ofBoard.map(({ day }) => day).sort()[0] ?? null,
    });
    days.push(...ofBoard);
  }
  return { boards, days, known, left, cut, otherInYard, inTwoStacks };
}

const isOtherThickness = (one: number, other: number): boolean => Math.abs(one - other) > 0.5;

/** Whether a row gives a board another species or thickness than the board of the yard with its ID. */
const isOther = ({ speciesId, thickness }: RowOfBoard, inYard: KnownBoard): boolean =>
  (speciesId !== null && speciesId !== inYard.speciesId) ||
  (thickness !== null && isOtherThickness(thickness.mm, inYard.thicknessMm));

function refuseOther(
  { row, code, speciesId }: RowOfBoard,
  inYard: KnownBoard,
  rows: Rows,
  yard: KnownYard,
): void {
  if (speciesId !== null && speciesId !== inYard.speciesId) {
    const speciesName = nameOfSpecies(inYard.speciesId, yard.species);
    const facts = { boardCode: code, speciesName };
    rows.refuse(row, rows.columnOf('code'), message('import.yard-other-species', facts));
  } else {
    const yardThickness = thicknessOf(inYard);
    const facts = { boardCode: code, yardThickness };
    rows.refuse(row, rows.columnOf('code'), message('import.yard-other-thickness', facts));
  }
}

/** Whether a row gives its board another species or thickness than the first row that gives one; it is then refused. */
function conflicts(facts: RowOfBoard, all: readonly RowOfBoard[], rows: Rows): boolean {
  const given = all.find(({ speciesId }) => speciesId !== null);
  if (facts.speciesId !== null && given && given.speciesId !== facts.speciesId) {
    rows.refuse(
      facts.row,
      rows.columnOf('species'),
      message('import.other-species', { line: given.row + 1 }),
    );
    return true;
  }
  const logged = all.find(({ log }) => log !== null);
  if (facts.log !== null && logged && nameKey(logged.log ?? '') !== nameKey(facts.log)) {
    rows.refuse(facts.row, rows.columnOf('log'), message('import.other-log', { line: logged.row + 1 }));
    return true;
  }
  const thick = all.find(({ thickness }) => thickness !== null);
  if (facts.thickness && thick?.thickness && isOtherThickness(thick.thickness.mm, facts.thickness.mm)) {
    const { mm, quarters } = thick.thickness;
    const rowThickness = thicknessOf({ thicknessMm: mm, thicknessQuarters: quarters });
    rows.refuse(
      facts.row,
      rows.columnOf('thickness'),
      message('import.other-thickness', { line: thick.row + 1, rowThickness }),
    );
    return true;
  }
  return false;
}

/** Rows of a board, without those with readings of a day on which it was read in another stack; they are refused. */
function inOneStackADay(group: readonly RowOfBoard[], rows: Rows): RowOfBoard[] {
  const stackOfDay = new Map<string, { name: string; row: number }>();
  return group.filter(({ row, stackName, days }) => {
    if (stackName === null) return true;
    const name = nameKey(stackName);
    for (const { day } of days) {
      const first = stackOfDay.get(day) ?? { name, row };
      stackOfDay.set(day, first);
      if (first.name === name) continue;
      rows.refuse(row, rows.columnOf('stack'), message('import.other-stack', { line: first.row + 1 }));
      return false;
    }
    return true;
  });
}

const earlier = (one: number | null, other: number | null): number | null =>
  one === null || other === null ? (one ?? other) : Math.min(one, other);

function daysOf(code: string, boardId: number | null, group: readonly RowOfBoard[]): BoardDay[] {
  const byDay = new Map<string, BoardDay>();
  for (const { days } of group) {
    for (const { day, reading } of days) {
      const { minutes } = reading;
      const same = byDay.get(day);
      if (same) {
        same.readings.push(reading);
        same.minutes = earlier(same.minutes, minutes);
      } else byDay.set(day, { code, boardId, day, minutes, readings: [reading] });
    }
  }
  return [...byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
}
