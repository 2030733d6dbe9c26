import type { LeftList } from '../../shared-core/contract/archive.ts';
import type { CsvKind } from '../../shared-core/contract/exchange.ts';
import type {
  AirForCsv,
  BoardForCsv,
  CallForCsv,
  CsvRowOf,
  ForecastForCsv,
  ReadingForCsv,
} from '../../shared-core/exchange/csv-tables.ts';
import { toldDepths } from '../../shared-core/probing/readings/told-depths.ts';
import { isoOf } from '../../shared-core/time.ts';
import { DAMPEST_RH, emcPct } from '../../shared-core/wood/climate/emc.ts';
import { unusedOf } from '../../shared-core/wood/climate/measured-air.ts';
import { logUse } from '../app/air/measured-places.ts';
import { endOfDay } from '../app/forecast/end-of-day.ts';
import { dayOf } from '../app/forecast/judging-board.ts';
import { createAssessing } from '../app/judging/assessing.ts';
import { createOwnFits } from '../app/judging/own-fits.ts';
import { createBadCaches } from '../store/bad-caches.ts';
import { rowsToExport } from '../store/rows-to-export.ts';
import { readsOf } from '../store/yard.ts';
import type { Db } from '../store/yard-file.ts';

/** A row, with how many there are of what the rows are made from, and which of these it is. */
interface Made<R> {
  row: R;
  done: number;
  total: number;
}

/** So many boards of a list are read at a time. */
const AT_A_TIME = 500;

const SOURCE_OF: Readonly<Record<string, 'typed' | 'imported'>> = {
  'air.type': 'typed',
  'air.edit': 'typed',
  'imports.save': 'imported',
};

function inOrderOf<R extends { id: number }>(rows: readonly R[], ids: Iterable<number>): R[] {
  const byId = new Map(rows.map((row) => [row.id, row]));
  return Array.from(ids, (id) => byId.get(id)).filter((row) => row !== undefined);
}

/**
 * The rows of a table of the yard over a connection, as the yard is now: what is corrected is corrected as on screen; calls
 * and forecasts are those that the file has saved.
 * @param left   of the boards, those of this list; null: every board
 * @param nowAt  UTC instant
 */
export function csvRows<K extends CsvKind>(
  db: Db,
  kind: K,
  left: LeftList | null,
  nowAt: string,
): Generator<Made<CsvRowOf<K>>> {
  const yard = readsOf(db, createBadCaches());
  const rows = rowsToExport(db);
  const startOf = new Map(rows.roundStarts.all().map(({ id, ...round }) => [id, round]));
  /** Of a round of which only the day is known, the local day. */
  const whenRead = (roundId: number, at: string): string =>
    startOf.get(roundId)?.datedBy === 'day' ? dayOf(at) : at;

  function* idsOfLeft(list: LeftList): Generator<number> {
    for (let offset = 0; ; offset += AT_A_TIME) {
      const page = yard.boards.page({ ...list, filter: 'archived', offset, limit: AT_A_TIME }).rows;
      yield* page.map(({ id }) => id);
      if (page.length < AT_A_TIME) return;
    }
  }

  function* boards(): Generator<Made<BoardForCsv>> {
    const every = rows.boards.all();
    const all = left === null ? every : inOrderOf(every, idsOfLeft(left));
    for (const [index, { id, uuid, endUseName, cutFrom }] of all.entries()) {
      const board = yard.boards.get(id);
      if (board === undefined) continue;
      const { latest } = board;
      const row = {
        ...board,
        uuid,
        endUseName,
        cutFrom,
        call: latest?.call ?? null,
        averagePct: latest?.averagePct ?? null,
        readAt: latest && whenRead(latest.roundId, latest.at),
      };
      yield { row, done: index + 1, total: all.length };
    }
  }

  function* readings(): Generator<Made<ReadingForCsv>> {
    const context = { yard: () => yard, now: () => nowAt };
    const assessing = createAssessing(context, createOwnFits(context));
    const all = rows.readTogether.all();
    const total = all.reduce((sum, each) => sum + each.readings, 0);
    let done = 0;
    for (const { boardId, keptId, roundId, code, stackName, roundStartedAt } of all) {
      const uuids = new Map(rows.readingUuids.all(boardId, roundId).map(({ id, uuid }) => [id, uuid]));
      for (const { reading, corrected } of assessing.corrected(keptId, roundId)) {
        // Those of what it came from are rows of that board.
        if (reading.boardId !== boardId) continue;
        const { meterProfileId } = reading;
        const meter = meterProfileId === null ? undefined : rows.meterOfProfile.get(meterProfileId);
        const row = {
          ...reading,
          corrected,
          uuid: uuids.get(reading.id) ?? '',
          code,
          stackName,
          takenAt: whenRead(roundId, reading.takenAt),
          roundStartedAt: whenRead(roundId, roundStartedAt),
          meterName: meter?.meterName ?? null,
          profileVersion: meter?.profileVersion ?? null,
        };
        yield { row, done: ++done, total };
      }
    }
  }

  function* calls(): Generator<Made<CallForCsv>> {
    const all = rows.boards.all();
    for (const [index, { id }] of all.entries()) {
      const own = new Set(yard.readings.ownRounds(id));
      const found = yard.findings.ofBoard(id).filter(({ roundId }) => own.has(roundId));
      const board = found.length === 0 ? undefined : yard.boards.get(id);
      // The calls of one that was merged are those of the board that stays.
      if (board === undefined || board.archived?.code === 'merged') continue;
      const { code, stackName } = board;
      for (const finding of found) {
        const { roundId } = finding;
        const at = whenRead(roundId, finding.at);
        const roundStartedAt = whenRead(roundId, startOf.get(roundId)?.startedAt ?? finding.at);
        yield {
          row: { ...finding, ...toldDepths(finding), at, code, stackName, roundStartedAt },
          done: index + 1,
          total: all.length,
        };
      }
    }
  }

  function* forecasts(): Generator<Made<ForecastForCsv>> {
    const nameOf = new Map(yard.places.list().map(({ id, name }) => [id, name]));
    const all = rows.forecasts.all();
    for (const [index, { boardId, madeOn }] of all.entries()) {
      const board = yard.boards.get(boardId);
      if (!board?.outlook) continue;
      const { code, stackName, placeId: hereId, outlook, judgement } = board;
      for (const { placeId, ready } of judgement.places) {
        const row = {
          ...outlook,
          code,
          stackName,
          madeOn,
          ready,
          placeName: nameOf.get(placeId) ?? '',
          isHere: placeId === hereId,
          isBest: placeId === judgement.bestPlaceId,
        };
        yield { row, done: index + 1, total: all.length };
      }
    }
  }

  function* air(): Generator<Made<AirForCsv>> {
    const places = [...yard.places.list(), ...yard.places.closed()];
    const sources = yard.airLogs.sources();
    for (const [index, { id: placeId, name: placeName }] of places.entries()) {
      const place = yard.places.get(placeId);
      if (place === undefined) continue;
      const log = yard.airLogs.atPlace(placeId, '');
      const unused = unusedOf(log, place.air, logUse(yard, place, endOfDay(nowAt)));
      for (const [at, { id, atMs, tempC, rh }] of log.entries()) {
        const { sensorName = null, request = null } = sources.get(id) ?? {};
        const row = {
          placeName,
          at: isoOf(atMs),
          tempC,
          rh,
          emcPct: emcPct(tempC, Math.min(DAMPEST_RH, rh)),
          source: sensorName === null ? (SOURCE_OF[request ?? ''] ?? 'merged') : 'sensor',
          sensorName,
          unused: unused[at] ?? null,
        } as const;
        yield { row, done: index + 1, total: places.length };
      }
    }
  }

  const made = { boards, readings, calls, forecasts, air };
  return made[kind]() as Generator<Made<CsvRowOf<K>>>;
}
