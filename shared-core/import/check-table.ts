import {
  answerFor,
  type ColumnChoice,
  type ColumnRole,
  dayRoles,
  type ImportChoices,
  nameKey,
  repeatedRoles,
  rolesOfReadings,
} from '../contract/import.ts';
import { boardCodeSchema, type NewPlace } from '../contract/yard.ts';
import type { Air } from '../wood/climate/monthly-air.ts';
import { type Message, message } from '../words/message.ts';
import { codeOf } from './board-id.ts';
import type { BoardDay, BoardToAdd, KnownYard } from './boards-of-table.ts';
import { type AirOfTable, checkAir, type DatedAir } from './check-air.ts';
import { checkBoards } from './check-boards.ts';
import { checkOven, type OvenCheckOfTable } from './check-oven.ts';
import { areReadingsLike, ofEachReading } from './column-roles.ts';
import { headTexts } from './header-row.ts';
import { meaningOf } from './headers.ts';
import { type MissedName, type RefusedRow, rowsOf } from './rows.ts';
import type { SpeciesName } from './species-named.ts';
import type { Table } from './table.ts';

/** A place by its row in the yard, or by the name of one that the import adds. */
export type PlaceOfPlan = { placeId: number } | { name: string };

export interface StackToAdd {
  name: string;
  place: PlaceOfPlan;
  endUseId: string;
}

/** All that a table brings, in the order in which it is saved. */
export interface ImportPlan {
  places: NewPlace[];
  stacks: StackToAdd[];
  boards: (BoardToAdd & { place: PlaceOfPlan | null })[];
  days: BoardDay[];
  meterId: number | null;
  air: (Pick<AirOfTable, 'months'> & { place: PlaceOfPlan })[];
  airLogs: { place: PlaceOfPlan; values: DatedAir[] }[];
  ovenChecks: OvenCheckOfTable[];
}

export interface CheckedTable {
  plan: ImportPlan;
  /** Why nothing can go in as the columns are now; none where something can. */
  problems: Message[];
  /** What a person should know of what goes in. */
  remarks: Message[];
  /** Rows that go in. */
  rows: number;
  leftOut: number;
  refused: RefusedRow[];
  /** Of those that are not simply the name of a species, what each was taken for. */
  speciesNames: SpeciesName[];
  unknownPlaces: MissedName[];
  /** Boards of the yard that the table gives another species or thickness. */
  otherInYard: number;
  /** The first rows that go in, as they were read. */
  firstRows: Message[];
}

/** A remark or a problem names no more boards than a person reads. */
export const MOST_NAMED = 5;
/** So many rows tell whether a column that is not imported has readings. */
const MOST_TOLD_BY = 400;
/** An average or a corrected value follows from the readings, so nobody misses it. */
const isOfReadings = (head: string, today: string): boolean => {
  const { role, unit } = meaningOf(head, today);
  return role !== null || (unit !== null && unit !== 'pct');
};

const NEEDED: Record<ImportChoices['kind'], readonly ColumnRole[]> = {
  boards: [],
  air: ['air-temp', 'humidity'],
  oven: ['piece', 'reading', 'wet-weight'],
};

/**
 * What of a table goes into the yard, as a person chose to read it, and what does not.
 *
 * @param isTurned  its rows were columns
 */
export function checkTable(
  table: Table,
  choices: ImportChoices,
  yard: KnownYard,
  isTurned: boolean,
): CheckedTable {
  const plan: ImportPlan = {
    places: [],
    stacks: [],
    boards: [],
    days: [],
    meterId: choices.meterId,
    air: [],
    airLogs: [],
    ovenChecks: [],
  };
  const rows = rowsOf(table, choices);
  const heads = headTexts(table, choices.headerRow, yard.today);
  const problems = problemsOf(choices, heads, yard.today);
  const remarks: Message[] = [];
  let knownBoards = 0;
  let otherInYard = 0;
  let firstRows: Message[] = [];
  if (problems.length === 0) {
    if (choices.kind === 'boards') {
      const checked = checkBoards(rows, choices, yard, isTurned);
      const { boards, days, left, cut, inTwoStacks, otherIds, withoutNumber, alike } = checked;
      knownBoards = checked.known;
      otherInYard = checked.otherInYard;
      firstRows = checked.firstRows;
      plan.days = days;
      planBoards(boards);
      for (const [how, codes] of [
        ['left', left],
        ['cut', cut],
      ] as const) {
        const facts = { boards: codes.length, someCodes: codes.slice(0, MOST_NAMED) };
        if (codes.length > 0) remarks.push(message(`import.${how}-boards`, facts));
      }
      if (inTwoStacks > 0) remarks.push(message('import.in-two-stacks', { boards: inTwoStacks }));
      for (const [boardCode, { code: intoCode, why }] of [...otherIds].slice(0, MOST_NAMED))
        remarks.push(message(`import.${why}-board`, { boardCode, intoCode }));
      if (otherIds.size > MOST_NAMED)
        remarks.push(message('import.more-other-ids', { boards: otherIds.size - MOST_NAMED }));
      if (alike > 0) remarks.push(message('import.rows-alike', { rows: alike }));
      for (const [text, cells] of withoutNumber)
        remarks.push(message('import.without-number', { cells, cellTypedText: text }));
    } else if (choices.kind === 'air') checkAir(rows, choices, yard).forEach(planAir);
    else plan.ovenChecks = checkOven(rows, choices, yard);
  }

  function placeOf(name: string | null): PlaceOfPlan | null {
    if (name === null) {
      if (choices.place === null || 'placeId' in choices.place) return choices.place;
      return add(choices.place.add);
    }
    const known = yard.places.get(nameKey(name));
    if (known !== undefined) return { placeId: known };
    const meant = answerFor(choices.placesOfNames, name);
    return meant === undefined ? null : 'placeId' in meant ? meant : add({ ...meant.add, name });
  }
  function add(place: NewPlace): PlaceOfPlan {
    const known = yard.places.get(nameKey(place.name));
    if (known !== undefined) return { placeId: known };
    if (!plan.places.some(({ name }) => nameKey(name) === nameKey(place.name))) plan.places.push(place);
    return { name: place.name };
  }

  function planBoards(boards: readonly BoardToAdd[]): void {
    const added = new Set<string>();
    const reopened = new Map<string, Message>();
    for (const board of boards) {
      const key = nameKey(board.stackName);
      const own = board.placeName === null ? null : placeOf(board.placeName);
      if (!yard.stacks.has(key) && !added.has(key)) {
        const place = own ?? placeOf(null);
        if (place === null) {
          problems.push(message('import.choose-place'));
          return;
        }
        added.add(key);
        plan.stacks.push({ name: board.stackName, place, endUseId: choices.endUseId });
      }
      if (yard.closedStacks.has(key)) {
        const stackName = yard.stacks.get(key) ?? board.stackName;
        reopened.set(`stack ${key}`, message('import.reopens-stack', { stackName }));
      }
      if (own && 'placeId' in own && yard.closedPlaces.has(own.placeId)) {
        const placeName = board.placeName ?? '';
        reopened.set(`place ${own.placeId}`, message('import.reopens-place', { placeName }));
      }
      plan.boards.push({ ...board, place: own });
    }
    remarks.push(...reopened.values());
    if (knownBoards > 0) remarks.push(message('import.known-boards', { boards: knownBoards }));
    if (plan.days.some(({ readings }) => readings.some(({ tempC }) => tempC === null)))
      remarks.push(message('import.temperature-missing'));
    if (
      plan.days.some(({ readings }) =>
        readings.some(({ depth, depthMm }) => depth === null && depthMm === null),
      )
    )
      remarks.push(message('import.depth-missing'));
    if (boards.some(({ sawnOn, firstReadOn }) => sawnOn !== null || firstReadOn !== null))
      remarks.push(message('import.at-place-since'));
  }

  function planAir({ placeName, months, dated, thin }: AirOfTable): void {
    const isWhole = months.every((month) => month !== null);
    for (const thinMonth of thin) remarks.push(message('import.month-thin', { thinMonth }));
    const key = placeName === null ? null : nameKey(placeName);
    const meant = placeName === null ? choices.place : (answerFor(choices.placesOfNames, placeName) ?? null);
    const isNew = (key === null || !yard.places.has(key)) && meant !== null && 'add' in meant;
    if (isNew && !isWhole) {
      problems.push(message('import.months-missing', { placeName: placeName ?? '' }));
      return;
    }
    const place = placeOf(placeName);
    if (place === null) {
      problems.push(message('import.choose-place'));
      return;
    }
    if (months.some((month) => month !== null)) plan.air.push({ place, months });
    if (dated.length > 0) plan.airLogs.push({ place, values: dated });
  }

  const hasReadings = choices.columns.some(({ role }) => role === 'reading');
  for (const [column, { role }] of choices.columns.entries()) {
    if (role !== 'unused' || problems.length > 0) continue;
    const cells = table.slice((choices.headerRow ?? -1) + 1, MOST_TOLD_BY).map((row) => row[column] ?? '');
    const head = heads[column] ?? '';
    if (areReadingsLike(cells, choices.decimalMark, hasReadings) && !isOfReadings(head, yard.today))
      remarks.push(message('import.numbers-unused', { columnName: head || String(column + 1) }));
  }
  const refused = rows.refused();
  const { species, places } = rows.names();
  if (problems.length > 0) {
    plan.boards = [];
    plan.days = [];
    firstRows = [];
  }
  return {
    plan,
    problems,
    remarks,
    rows: problems.length > 0 ? 0 : rows.used.length - refused.length,
    leftOut: rows.leftOut,
    refused,
    speciesNames: species,
    unknownPlaces: places,
    otherInYard,
    firstRows,
  };
}

/** Whether each date after the first has its own weight to its right. */
const areDaysOfDry = ([, ...days]: readonly number[], dry: readonly number[]): boolean =>
  days.every((day, at) => dry.some((weight) => weight > day && weight < (days[at + 1] ?? Infinity)));

/** Nothing says whose the rows are. Beside the average of the others, each column can be a board as well. */
function boardMissing(columns: readonly ColumnChoice[], heads: readonly string[], today: string): Message {
  const mean = heads.find(
    (head, column) => columns[column]?.role === 'unused' && meaningOf(head, today).depth === 'average',
  );
  return mean === undefined
    ? message('import.board-missing')
    : message('import.board-missing-mean', { columnName: mean });
}

function problemsOf(
  { kind, columns, boardCode }: ImportChoices,
  heads: readonly string[],
  today: string,
): Message[] {
  const problems: Message[] = [];
  for (const [column, { role, order }] of columns.entries()) {
    if (dayRoles.includes(role) && order === null)
      problems.push(message('import.choose-order', { columnName: heads[column] || String(column + 1) }));
  }
  // A temperature of a day does not count as another of them.
  const isOf = (role: ColumnRole, column: ColumnChoice): boolean =>
    column.role === role && (role === 'reading' || column.on === null);
  const count = (role: ColumnRole) => columns.filter((column) => isOf(role, column)).length;
  if (kind === 'boards' && count('code') === 0) {
    if (boardCode.trim() === '') problems.push(boardMissing(columns, heads, today));
    else if (!boardCodeSchema.safeParse(codeOf(boardCode)).success)
      problems.push(message('import.bad-code', { cellTypedText: boardCode }));
  }
  for (const role of NEEDED[kind]) {
    if (count(role) === 0)
      problems.push(message('import.column-missing', { roleName: message(`import.role.${role}`) }));
  }
  if (kind === 'air' && count('month') + count('day') === 0)
    problems.push(message('import.column-missing', { roleName: message('import.role.month') }));
  if (kind === 'oven' && count('day') === 0)
    problems.push(message('import.column-missing', { roleName: message('import.role.day') }));
  const isDated = count('day') > 0 || columns.every(({ role, on }) => role !== 'reading' || on !== null);
  if (kind === 'boards' && !isDated)
    problems.push(message('import.column-missing', { roleName: message('import.role.day') }));
  const columnsOf = (role: ColumnRole) => columns.flatMap((column, at) => (isOf(role, column) ? [at] : []));
  for (const role of new Set(columns.map((column) => column.role))) {
    const isOfOthers =
      (kind === 'boards' &&
        rolesOfReadings.includes(role) &&
        ofEachReading(columnsOf(role), columnsOf('reading')) !== null) ||
      (kind === 'oven' && role === 'day' && areDaysOfDry(columnsOf('day'), columnsOf('dry-weight')));
    if (!repeatedRoles.includes(role) && !isOfOthers && count(role) > 1)
      problems.push(message('import.role-twice', { roleName: message(`import.role.${role}`) }));
  }
  return problems;
}

/** What a board was read on a day, without what the yard has of that day. */
export function withoutKnown<R extends { raw: number; unit: string }>(
  readings: readonly R[],
  known: readonly { raw: number; unit: string }[],
): R[] {
  const left = known.map(({ raw, unit }) => `${raw} ${unit}`);
  return readings.filter(({ raw, unit }) => {
    const at = left.indexOf(`${raw} ${unit}`);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

/** The months of a place with those that a table has. */
export const withMonths = <M extends Air>(air: readonly M[], months: readonly (Air | null)[]): (M | Air)[] =>
  air.map((month, index) => months[index] ?? month);
