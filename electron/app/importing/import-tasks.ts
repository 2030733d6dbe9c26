import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type ImportChoices, nameKey } from '../../../shared-core/contract/import.ts';
import { type ImportCounts, MOST_REFUSED_SHOWN } from '../../../shared-core/contract/requests/imports.ts';
import type { KnownBoard, KnownYard } from '../../../shared-core/import/boards-of-table.ts';
import {
  type CheckedTable,
  checkTable,
  type ImportPlan,
  MOST_NAMED,
  withMonths,
  withoutKnown,
} from '../../../shared-core/import/check-table.ts';
import { type GuessedTable, guessColumns, guessTable } from '../../../shared-core/import/guess-columns.ts';
import { headTexts } from '../../../shared-core/import/header-row.ts';
import { type Reshaped, reshapedTable } from '../../../shared-core/import/reshaped.ts';
import type { Reader, Table } from '../../../shared-core/import/table.ts';
import type { Outcome } from '../../../shared-core/outcome.ts';
import { message } from '../../../shared-core/words/message.ts';
import { createBadCaches } from '../../store/bad-caches.ts';
import { prepareWhenUsed } from '../../store/when-used.ts';
import { readsOf } from '../../store/yard.ts';
import { instantOfAir } from '../air/place-air.ts';
import { unorderedMoves } from '../rounds/page-order.ts';
import { localDay } from '../yard/backup-tasks.ts';
import { tableInFile } from './table-file.ts';

/** What the machine knows of whoever imports. */
export type ReaderOfFile = Omit<Reader, 'species'> & { yardFile: string };

export type ImportQuestion =
  | { task: 'read'; file: string; reader: ReaderOfFile }
  | ({ task: 'guess'; reader: ReaderOfFile } & Pick<ImportChoices, 'kind' | 'headerRow' | 'decimalMark'>)
  | { task: 'check'; choices: ImportChoices; refusedFrom: number; yardFile: string; now: string };

export interface GuessedAnswer {
  guessed: GuessedTable;
  heads: string[];
  sample: { row: number; cells: string[] }[];
}
/** A part of a plan, as JSON, small enough to be read at once. */
export type PlanPart =
  | (Pick<ImportPlan, 'places' | 'stacks' | 'meterId'> & Partial<Pick<ImportChoices, 'order'>>)
  | Pick<ImportPlan, 'boards'>
  | Pick<ImportPlan, 'days'>
  | Pick<ImportPlan, 'air'>
  | { airLog: ImportPlan['airLogs'][number] }
  | Pick<ImportPlan, 'ovenChecks'>;
export interface CheckedAnswer extends Omit<CheckedTable, 'plan' | 'refused'> {
  counts: ImportCounts;
  knownReadings: number;
  refused: number;
  isOrderAsked: boolean;
  refusedRows: (CheckedTable['refused'][number] & { cells: string[] })[];
  parts: string[];
  /** Of all parts. */
  content: string;
}
export interface ImportAnswers {
  read: GuessedAnswer & { rows: number; reshaped: Reshaped };
  guess: GuessedAnswer;
  check: CheckedAnswer;
}

/** Rows below the header that a person sees while they choose the columns. */
const SAMPLE_ROWS = 8;
/** So many names of species, or of places, are shown. */
const MOST_NAMES_SHOWN = 100;
/** Boards, days of boards, or values of air in one part of a plan. */
const IN_PART = 200;

/** The thread's side: it has the table, which no answer carries whole. */
export function createImportTasks() {
  let table: Table | null = null;
  let isTurned = false;

  function withYard<T>(file: string, work: (db: Database.Database) => T): T {
    const db = new Database(file, { readonly: true, timeout: 2000 });
    prepareWhenUsed(db);
    try {
      return work(db);
    } finally {
      db.close();
    }
  }
  const held = (): Table => {
    if (table === null) throw new Refusal(message('import.refused-gone'));
    return table;
  };
  const readerOf = ({ yardFile, ...reader }: ReaderOfFile): Reader => ({
    ...reader,
    species: withYard(yardFile, (db) => readsOf(db, createBadCaches()).species.list()),
  });

  function guessedOf(guessed: GuessedTable, today: string): GuessedAnswer {
    const rows = held();
    const { headerRow } = guessed;
    const heads = headTexts(rows, headerRow, today);
    const from = (headerRow ?? -1) + 1;
    return {
      guessed,
      heads: guessed.columns.map((_, column) => heads[column] ?? ''),
      sample: rows
        .slice(from, from + SAMPLE_ROWS)
        .map((cells, at) => ({ row: from + at, cells: [...cells] })),
    };
  }

  function check({
    choices,
    refusedFrom,
    yardFile,
    now,
  }: Extract<ImportQuestion, { task: 'check' }>): CheckedAnswer {
    const rows = held();
    return withYard(yardFile, (db) => {
      const reads = readsOf(db, createBadCaches());
      const inYard = (where: 'id' | 'code') =>
        db.prepare<[number | string], Omit<KnownBoard, keyof typeof asAsked>>(
          `SELECT id, code, species_id AS speciesId, sawn_on AS sawnOn, thickness_mm AS thicknessMm,
            thickness_quarters AS thicknessQuarters
          FROM board WHERE ${where} = ? AND archived_at IS NULL`,
        );
      const [inYardWithCode, inYardById] = [inYard('code'), inYard('id')];
      const left = reads.boards.leftYard().map(({ leftAt, isCut, ...board }) => ({
        ...board,
        ...asAsked,
        leftOn: localDay(leftAt),
        isCut: isCut === 1,
      }));
      // Of several that had an ID the last is meant.
      const leftWithCode = new Map(left.map((board) => [board.code, board]));
      const leftById = new Map(left.map((board) => [board.id, board]));
      const mergedInto = new Map(reads.boards.merged().map(({ code, intoId }) => [code, intoId]));
      // Read through only where a table has an ID that no board has.
      let renamed: Map<string, number> | null = null;
      function renamedTo(code: string): number | undefined {
        renamed ??= new Map(reads.boards.earlierCodes().map((earlier) => [earlier.code, earlier.boardId]));
        return renamed.get(code);
      }
      function withOwn(code: string): KnownBoard | undefined {
        const found = inYardWithCode.get(code);
        return found ? { ...found, ...asAsked } : leftWithCode.get(code);
      }
      /** None where its ID means another board now. */
      function withId(id: number | undefined, otherId: 'merged' | 'renamed'): KnownBoard | undefined {
        if (id === undefined) return undefined;
        const code = (inYardById.get(id) ?? leftById.get(id))?.code;
        const board = code === undefined ? undefined : withOwn(code);
        return board?.id === id ? { ...board, otherId } : undefined;
      }
      const boardOf = (code: string): KnownBoard | undefined =>
        withOwn(code) ?? withId(mergedInto.get(code), 'merged') ?? withId(renamedTo(code), 'renamed');
      const openStacks = reads.stacks.list();
      const closedStacks = reads.stacks.closed();
      const closedPlaces = reads.places.closed();
      const openKeys = new Set(openStacks.map(({ name }) => nameKey(name)));
      const closedKeys = closedStacks.map(({ name }) => nameKey(name));
      const yard: KnownYard = {
        today: localDay(now),
        minutesNow: minutesOf(new Date(now)),
        localOf: ({ day, minutes, aheadMinutes }) => {
          const time = new Date(Date.parse(day) + (minutes - aheadMinutes) * MINUTE_MS);
          return { day: localDay(time.toISOString()), minutes: minutesOf(time) };
        },
        species: reads.species.list(),
        board: boardOf,
        // An open one of the same name comes last, and is meant.
        stacks: new Map([...closedStacks, ...openStacks].map(({ name }) => [nameKey(name), name])),
        places: new Map([...closedPlaces, ...reads.places.list()].map(({ id, name }) => [nameKey(name), id])),
        closedStacks: new Set(closedKeys.filter((key) => !openKeys.has(key))),
        closedPlaces: new Set(closedPlaces.map(({ id }) => id)),
      };
      const checked = checkTable(rows, choices, yard, isTurned);
      const { plan } = checked;
      const knownOf = reads.readings.ofDays;
      let readings = 0;
      let knownReadings = 0;
      const seen = new Map<string, ReturnType<typeof knownOf>>();
      const moved = new Set<string>();
      for (const { code, boardId, day, minutes, readings: all } of plan.days) {
        const id = boardId ?? undefined;
        if (id !== undefined && !seen.has(code)) seen.set(code, knownOf(id));
        const there = (seen.get(code) ?? []).filter(({ takenAt }) => localDay(takenAt) === day);
        const added = withoutKnown(all, there).length;
        readings += added;
        knownReadings += all.length - added;
        if (id === undefined || added === 0) continue;
        const noon = `${day}T12:00`;
        if (unorderedMoves({ yard: () => reads }, id, noon, minutes === null).length > 0) moved.add(code);
      }
      const isOrderAsked = moved.size > 0;
      if (isOrderAsked && choices.order === null) {
        const facts = { boards: moved.size, someCodes: [...moved].slice(0, MOST_NAMED) };
        checked.problems.push(message('import.moved-or-probed-first', facts));
        checked.rows = 0;
        readings = 0;
        for (const some of [plan.places, plan.stacks, plan.boards, plan.days]) some.length = 0;
      }
      const isOtherAir = ({ place, months }: ImportPlan['air'][number]): boolean => {
        const known = 'placeId' in place ? reads.places.get(place.placeId) : undefined;
        return (
          known !== undefined && JSON.stringify(known.air) !== JSON.stringify(withMonths(known.air, months))
        );
      };
      const newOfLog = ({ place, values }: ImportPlan['airLogs'][number]): number =>
        'placeId' in place
          ? values.filter(
              ({ tempC, rh, ...when }) =>
                !reads.airLogs.isTyped({ placeId: place.placeId, at: instantOfAir(when), tempC, rh }),
            ).length
          : values.length;
      const parts = partsOf(plan, isOrderAsked ? choices.order : null);
      return {
        ...shownOf(checked),
        isOrderAsked,
        counts: {
          places: plan.places.length + plan.air.filter(isOtherAir).length,
          stacks: plan.stacks.length,
          boards: plan.boards.length,
          readings,
          airValues: plan.airLogs.reduce((sum, log) => sum + newOfLog(log), 0),
          ovenChecks: plan.ovenChecks.length,
        },
        knownReadings,
        refused: checked.refused.length,
        refusedRows: checked.refused
          .slice(refusedFrom, refusedFrom + MOST_REFUSED_SHOWN)
          .map((refused) => ({ ...refused, cells: cellsOf(rows, refused.row, choices) })),
        parts,
        content: hashOf(parts),
      };
    });
  }

  return async (question: ImportQuestion): Promise<Outcome<ImportAnswers[ImportQuestion['task']]>> => {
    try {
      switch (question.task) {
        case 'read': {
          const { today } = question.reader;
          const reader = readerOf(question.reader);
          const { reshaped, ...read } = reshapedTable(tableInFile(question.file), reader);
          table = read.table;
          isTurned = reshaped === 'turned';
          const guessed = guessedOf(guessTable(table, reader), today);
          return { ok: true, value: { ...guessed, rows: table.length, reshaped } };
        }
        case 'guess': {
          const { headerRow, decimalMark, kind, reader } = question;
          const guessed = guessColumns(held(), headerRow, decimalMark, kind, readerOf(reader));
          return { ok: true, value: guessedOf(guessed, reader.today) };
        }
        case 'check':
          return { ok: true, value: check(question) };
      }
    } catch (error) {
      if (error instanceof Refusal) return { ok: false, problem: error.problem };
      throw error;
    }
  };
}

/** Of a board of the yard, by its own ID. */
const asAsked = { otherId: null, leftOn: null, isCut: false } as const;

const MINUTE_MS = 60_000;
/** Since midnight, by the clock of this machine. */
const minutesOf = (time: Date): number => time.getHours() * 60 + time.getMinutes();

const shownOf = ({ plan: _plan, refused: _refused, ...shown }: CheckedTable) => ({
  ...shown,
  speciesNames: shown.speciesNames.slice(0, MOST_NAMES_SHOWN),
  unknownPlaces: shown.unknownPlaces.slice(0, MOST_NAMES_SHOWN),
});

/** As the person sees them now, with what they corrected. */
function cellsOf(table: Table, row: number, { fixes }: ImportChoices): string[] {
  const cells = [...(table[row] ?? [])];
  for (const fix of fixes) if (fix.row === row && fix.column < cells.length) cells[fix.column] = fix.text;
  return cells;
}

function partsOf(plan: ImportPlan, order: ImportChoices['order']): string[] {
  const { places, stacks, meterId } = plan;
  const sliced = <T>(all: readonly T[]): T[][] =>
    Array.from({ length: Math.ceil(all.length / IN_PART) }, (_, at) =>
      all.slice(at * IN_PART, (at + 1) * IN_PART),
    );
  // A round begins with the first reading of its day.
  const days = plan.days.toSorted(
    (a, b) => a.day.localeCompare(b.day) || (a.minutes ?? 720) - (b.minutes ?? 720),
  );
  const parts: PlanPart[] = [
    { places, stacks, meterId, ...(order && { order }) },
    ...sliced(plan.boards).map((boards) => ({ boards })),
    ...sliced(days).map((some) => ({ days: some })),
    ...sliced(plan.air).map((air) => ({ air })),
    ...plan.airLogs.flatMap(({ place, values }) =>
      sliced(values).map((some) => ({ airLog: { place, values: some } })),
    ),
    ...sliced(plan.ovenChecks).map((ovenChecks) => ({ ovenChecks })),
  ];
  return parts.map((part) => JSON.stringify(part));
}

function hashOf(parts: readonly string[]): string {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part).update('\n');
  return hash.digest('hex');
}
