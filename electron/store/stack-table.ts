import {
  type ClosedStack,
  type LikelyReady,
  latestFindingSchema,
  type NewStack,
  type Stack,
  type StackRow,
} from '../../shared-core/contract/yard.ts';
import { type Call, callSchema } from '../../shared-core/probing/calls/assessment.ts';
import { asJudged, readyOf } from '../../shared-core/probing/calls/judgement.ts';
import { type DueKind, dueKindSchema, nextStepByCall } from '../../shared-core/probing/calls/next-step.ts';
import { isFrozen } from '../../shared-core/probing/calls/round-step.ts';
import { toProbeThere } from '../../shared-core/probing/plan/due-elsewhere.ts';
import { lastReadyWhen } from '../../shared-core/probing/plan/last-ready.ts';
import { callOnStack, dueOfStack } from '../../shared-core/probing/plan/stack-call.ts';
import { isoOf } from '../../shared-core/time.ts';
import type { EndUse } from '../../shared-core/wood/species/end-use.ts';
import { message } from '../../shared-core/words/message.ts';
import { isNoSlip } from './amendment-table.ts';
import type { BadCacheCollector } from './bad-caches.ts';
import type { endUseReads } from './catalog-tables.ts';
import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import { FINDING_OF_READING } from './finding-table.ts';
import { outlookFrom } from './outlook-table.ts';
import { readJson, valueIn } from './read-json.ts';
import { holds, isAddedInVain } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

const reasonSchema = latestFindingSchema.pick({ call: true, reason: true });

const columns: Columns<NewStack> = {
  name: 'name',
  placeId: 'place_id',
  endUseId: 'end_use_id',
  topCover: 'top_cover',
  note: 'note',
};
const editColumns: Columns<NewStack & Pick<StackRow, 'closedAt'>> = { ...columns, closedAt: 'closed_at' };
const recordColumns: Columns<Stack & Pick<StackRow, 'version' | 'closedAt'>> = {
  id: 'id',
  version: 'version',
  ...editColumns,
};

type StackFields = Omit<
  StackRow,
  | 'targetRange'
  | 'boards'
  | 'probed'
  | 'halfProbed'
  | 'calls'
  | 'elsewhere'
  | 'averagePct'
  | 'averaged'
  | 'averageRead'
  | 'withoutPlace'
  | 'nextProbe'
  | 'shouldBeReady'
  | 'isForecasting'
  | 'nextReady'
  | 'withDay'
  | 'lastReady'
  | 'call'
  | 'due'
> & { isForecasting: 0 | 1 };

/** SQL for a closed stack `s` that has boards in the yard. */
export const CLOSED_STACK_IN_USE = `WHERE s.closed_at IS NOT NULL
  AND EXISTS (SELECT 1 FROM board b WHERE b.stack_id = s.id AND b.archived_at IS NULL)`;

/** Boards of a stack alike in where they are, in their call, and in what they are due for. */
interface BoardsAlike {
  stackId: number;
  placeId: number;
  call: Call | null;
  /** By its forecast; null where there is none, too. */
  due: DueKind | null;
  boards: number;
  /** Of so many boards with an average. */
  averages: number;
  sumPct: number | null;
  /** Of so many boards there is a day on which they are likely ready. */
  withDay: number;
  firstReadyOn: string | null;
  lastReadyOn: string | null;
  /** When the first and the last of those with an average were read. */
  firstReadAt: string | null;
  lastReadAt: string | null;
  /** By the forecasts, UTC, ms. */
  probeMs: number | null;
  /** Of those that no forecast names a day for. */
  oldestReadAt: string | null;
}

/** By its call alone until a forecast says more. */
const dueOf = ({ due, call }: BoardsAlike): DueKind | null => due ?? nextStepByCall(call).due;

/** Stacks as they are saved, and their lists with what is derived from their boards. */
export function stackReads(
  db: Db,
  badCaches: BadCacheCollector,
  endUses: Pick<ReturnType<typeof endUseReads>, 'get'>,
) {
  const select = `
    SELECT ${selected(recordColumns, 's')}, p.name AS placeName, coalesce(u.name, u.id) AS endUseName,
      (SELECT max(r.started_at) FROM round r
        WHERE r.stack_id = s.id AND r.undone_at IS NULL AND EXISTS (SELECT 1 FROM reading g WHERE g.round_id = r.id AND ${holds('g')} AND EXISTS (${FINDING_OF_READING}))
          AND EXISTS (SELECT 1 FROM finding f JOIN board b ON b.id = f.board_id
            WHERE f.round_id = r.id AND b.stack_id = s.id AND b.archived_at IS NULL)) AS lastProbedAt,
      (SELECT max(r.id) FROM round r WHERE r.stack_id = s.id AND r.finished_at IS NULL AND r.undone_at IS NULL) AS openRoundId,
      (SELECT r.id FROM round r WHERE r.stack_id = s.id AND r.finished_at IS NOT NULL AND r.undone_at IS NULL
        ORDER BY r.started_at DESC, r.id DESC LIMIT 1) AS lastRoundId,
      EXISTS (SELECT 1 FROM board b INDEXED BY board_by_standing JOIN outlook_due d ON d.board_id = b.id
        WHERE b.stack_id = s.id AND b.archived_at IS NULL
          AND NOT EXISTS (SELECT 1 FROM outlook o WHERE o.board_id = b.id)) AS isForecasting
    FROM stack s JOIN place p ON p.id = s.place_id JOIN end_use u ON u.id = s.end_use_id`;
  const list = db.prepare<[], StackFields>(`${select} WHERE s.closed_at IS NULL ORDER BY s.name`);
  const one = db.prepare<[number], StackFields>(`${select} WHERE s.id = ?`);
  const placeName = db.prepare<[number], string>('SELECT name FROM place WHERE id = ?').pluck();
  const useOf = db.prepare<[number], string>('SELECT end_use_id FROM stack WHERE id = ?').pluck();
  // In the order of that index, so that counting 100,000 boards sorts nothing.
  const alike = (which: string) => `
    SELECT b.stack_id AS stackId, b.place_id AS placeId, b.latest_call AS call, b.probe_why AS due,
      count(*) AS boards, count(b.ready_on) AS withDay, count(b.latest_average_pct) AS averages, sum(b.latest_average_pct) AS sumPct,
      min(b.ready_on) AS firstReadyOn, max(b.ready_on) AS lastReadyOn,
      min(iif(b.latest_average_pct IS NULL, NULL, b.latest_at)) AS firstReadAt,
      max(iif(b.latest_average_pct IS NULL, NULL, b.latest_at)) AS lastReadAt,
      min(b.probe_ms) AS probeMs, min(iif(b.probe_ms IS NULL, b.latest_at, NULL)) AS oldestReadAt
    FROM board b INDEXED BY board_by_standing WHERE ${which} b.archived_at IS NULL
    GROUP BY b.stack_id, b.place_id, b.latest_call, b.probe_why`;
  const allAlike = db.prepare<[], BoardsAlike>(alike(''));
  const alikeIn = db.prepare<[number], BoardsAlike>(alike('b.stack_id = ? AND'));
  const inStack = `b.stack_id = @stackId AND b.archived_at IS NULL AND b.place_id = @placeId`;
  const openRound = db.prepare<[number], { readings: number; boardsDone: number }>(
    `SELECT count(*) AS readings, count(DISTINCT f.board_id) AS boardsDone FROM reading g
     LEFT JOIN finding f ON f.board_id = g.board_id AND f.round_id = g.round_id
       AND ${valueIn('f.record', 'openSpot')} IS NULL AND json_valid(f.record)
     WHERE g.round_id = ? AND ${holds('g')} AND ${isNoSlip('g')}`,
  );
  const likelyOn = db.prepare<object, { boardId: number; record: string; placeName: string | null }>(
    `SELECT b.id AS boardId, o.record, p.name AS placeName FROM board b JOIN outlook o ON o.board_id = b.id
     LEFT JOIN place p ON p.id = ${valueIn('o.record', '$.judgement.bestPlaceId')}
     WHERE ${inStack} AND coalesce(b.latest_call, '') NOT IN ('ready', 'probe-again')
       AND b.probe_why IS NOT 'should-be-ready' AND b.ready_on = @readyOn LIMIT 1`,
  );
  const toProbeAgain = db.prepare<
    object,
    { boardId: number; boardCode: string; record: string; outlook: string | null }
  >(
    `SELECT b.id AS boardId, b.code AS boardCode, f.record, o.record AS outlook FROM board b
     JOIN finding f ON f.board_id = b.id AND f.round_id = b.latest_round_id
     LEFT JOIN outlook o ON o.board_id = b.id
     WHERE ${inStack} AND b.latest_call = 'probe-again' LIMIT 1`,
  );

  const averagedCode = db
    .prepare<object, string>(
      `SELECT b.code FROM board b
       WHERE ${inStack} AND b.latest_call IS NOT NULL AND b.latest_average_pct IS NOT NULL LIMIT 1`,
    )
    .pluck();
  const laterCode = db
    .prepare<object, string>(
      `SELECT b.code FROM board b WHERE ${inStack} AND b.probe_why = 'move-later' LIMIT 1`,
    )
    .pluck();

  const readBy = db
    .prepare<object, string>(
      `SELECT b.code FROM board b INDEXED BY board_by_standing
       WHERE ${inStack} AND b.latest_call <> 'ready' AND b.probe_ms IS NULL AND b.latest_at <= @dayEnd LIMIT 2`,
    )
    .pluck();
  /** The only board that was read by the day of the oldest reading, where others were read later. */
  function onlyOldest(inIt: object, oldestReadAt: string | null, lastProbedAt: string | null): string | null {
    if (oldestReadAt === null || lastProbedAt === null) return null;
    const dayEnd = isoOf(new Date(oldestReadAt).setHours(23, 59, 59, 999));
    if (Date.parse(lastProbedAt) <= Date.parse(dayEnd)) return null;
    const [code = null, another] = readBy.all({ ...inIt, dayEnd });
    return another === undefined ? code : null;
  }

  const halfProbed = db
    .prepare<object, number>(
      `SELECT count(*) FROM board b INDEXED BY board_half_probed
       WHERE ${inStack} AND b.latest_call IS NULL AND b.latest_at IS NOT NULL`,
    )
    .pluck();

  function toRow({ isForecasting, ...row }: StackFields, groups: readonly BoardsAlike[]): StackRow {
    const { minPct, maxPct } = endUses.get(row.endUseId) as EndUse;
    const inIt = { stackId: row.id, placeId: row.placeId };
    const here = groups.filter((group) => group.placeId === row.placeId);
    const gone = groups.filter((group) => group.placeId !== row.placeId);
    const boardsOf = (some: readonly BoardsAlike[], is: (group: BoardsAlike) => boolean = () => true) =>
      some.filter(is).reduce((sum, { boards }) => sum + boards, 0);
    const countBy = <K extends string>(keys: readonly K[], of: (group: BoardsAlike) => K | null) =>
      Object.fromEntries(keys.map((key) => [key, boardsOf(here, (group) => of(group) === key)])) as Record<
        K,
        number
      >;
    const placesOfGone = [...new Set(gone.map(({ placeId }) => placeId))].map((placeId) => {
      const there = gone.filter((group) => group.placeId === placeId);
      const groups = there.map((group) => ({
        boards: group.boards,
        isCalled: group.call !== null,
        due: dueOf(group),
      }));
      return {
        placeId,
        placeName: placeName.get(placeId) ?? '',
        boards: boardsOf(there),
        toProbe: toProbeThere(groups),
      };
    });
    const called = here.filter(({ call }) => call !== null);
    const averages = called.reduce((sum, group) => sum + group.averages, 0);
    const all = <K extends keyof BoardsAlike>(some: readonly BoardsAlike[], what: K) =>
      some.flatMap((group) => group[what] ?? []).sort() as NonNullable<BoardsAlike[K]>[];
    const from = all(called, 'firstReadAt')[0];
    const to = all(called, 'lastReadAt').at(-1);
    const averageRead = from === undefined || to === undefined ? null : { from, to };
    const dated = here.filter(
      ({ call, due }) => call !== 'ready' && call !== 'probe-again' && due !== 'should-be-ready',
    );
    const likelyReady = (readyOn: string | undefined): LikelyReady | null => {
      const found = readyOn === undefined ? undefined : likelyOn.get({ ...inIt, readyOn });
      const outlook = found ? outlookFrom(found.record, found.boardId, badCaches) : null;
      const ready = outlook && readyOf(outlook.judgement);
      return ready && { when: ready.when, placeName: ready.placeId === null ? null : found!.placeName };
    };
    const due = countBy(dueKindSchema.options, dueOf);
    const figures = {
      placeName: row.placeName,
      endUse: { minPct, maxPct },
      boards: boardsOf(here),
      halfProbed: halfProbed.get(inIt) as number,
      calls: countBy(callSchema.options, ({ call }) => call),
      averagePct:
        averages === 0 ? null : called.reduce((sum, { sumPct }) => sum + (sumPct ?? 0), 0) / averages,
      averaged: averages,
      averageRead,
      averagedCode: averages === 1 ? (averagedCode.get(inIt) ?? null) : null,
      due,
      laterCode: due['move-later'] === 1 ? (laterCode.get(inIt) ?? null) : null,
      openRound: row.openRoundId === null ? null : (openRound.get(row.openRoundId) ?? null),
    };
    const again = figures.calls['probe-again'] > 0 ? toProbeAgain.get(inIt) : undefined;
    const read = again && readJson(reasonSchema, again.record);
    if (again && !read) badCaches.add('findings', again.boardId);
    const judgement = again && outlookFrom(again.outlook, again.boardId, badCaches)?.judgement;
    const finding = read && judgement ? asJudged(read, judgement) : read;
    const standing = {
      ...figures,
      toProbeAgain:
        again && finding
          ? {
              boardCode: again.boardCode,
              why: isFrozen(finding) ? message('stack-call.frozen') : finding.reason,
            }
          : null,
    };
    const probeMs = here.flatMap((group) => group.probeMs ?? []);
    const unread = called.filter(({ call }) => call !== 'ready');
    const oldestReadAt = all(unread, 'oldestReadAt')[0] ?? null;
    const nextProbe = {
      forecastMs: probeMs.length === 0 ? null : Math.min(...probeMs),
      oldestReadAt,
      oldestCode: onlyOldest(inIt, oldestReadAt, row.lastProbedAt),
    };
    const next = likelyReady(all(dated, 'firstReadyOn')[0]);
    const last = likelyReady(all(dated, 'lastReadyOn').at(-1));
    const { boards, halfProbed: half, calls, averagePct, averaged } = figures;
    return {
      ...row,
      targetRange: { minPct, maxPct },
      boards,
      calls,
      averagePct,
      averaged,
      averageRead,
      withoutPlace: due['add-place'],
      nextProbe,
      shouldBeReady: due['should-be-ready'],
      isForecasting: isForecasting === 1,
      probed: boardsOf(here, ({ call }) => call !== null),
      halfProbed: half,
      elsewhere: {
        boards: boardsOf(gone),
        ready: boardsOf(gone, ({ call }) => call === 'ready'),
        places: placesOfGone.toSorted((a, b) => b.toProbe - a.toProbe || a.placeId - b.placeId),
      },
      withDay: dated.reduce((sum, group) => sum + group.withDay, 0),
      nextReady: next,
      lastReady: last && next ? { ...last, when: lastReadyWhen(next.when, last.when) } : last,
      call: callOnStack(standing),
      due: dueOfStack(standing),
    };
  }

  const closed = db.prepare<[], ClosedStack>(
    `SELECT s.id, s.version, s.name, p.name AS placeName, s.closed_at AS closedAt
     FROM stack s JOIN place p ON p.id = s.place_id
     WHERE s.closed_at IS NOT NULL AND NOT ${isAddedInVain('s')} ORDER BY s.closed_at DESC, s.id DESC`,
  );
  const uuids = db.prepare<[], { id: number; uuid: string }>('SELECT id, uuid FROM stack');
  return {
    /** Of each, by its id; they stay the same in every copy of the yard. */
    uuids: (): ReadonlyMap<number, string> => new Map(uuids.all().map(({ id, uuid }) => [id, uuid])),
    list: (): StackRow[] => {
      const groups = new Map<number, BoardsAlike[]>();
      for (const group of allAlike.iterate()) {
        const known = groups.get(group.stackId);
        if (known) known.push(group);
        else groups.set(group.stackId, [group]);
      }
      return list.all().map((row) => toRow(row, groups.get(row.id) ?? []));
    },
    /** The newest first. */
    closed: (): ClosedStack[] => closed.all(),
    /** Its use alone, without the figures of its boards: for the path on which a reading is saved. */
    endUseId: (id: number): string | undefined => useOf.get(id),
    get: (id: number): StackRow | undefined => {
      const row = one.get(id);
      return row && toRow(row, alikeIn.all(id));
    },
  };
}

export function stackWrites(db: Db, { get }: ReturnType<typeof stackReads>) {
  const removePlanned = db.prepare('DELETE FROM planned_move WHERE stack_id = ?');
  const remove = db.prepare('DELETE FROM stack WHERE id = ?');
  const unneeded = db
    .prepare<[number], number>(
      `SELECT id FROM stack WHERE id = ? AND id NOT IN (SELECT stack_id FROM board)
         AND id NOT IN (SELECT stack_id FROM round) AND id NOT IN (SELECT stack_id FROM picture WHERE stack_id IS NOT NULL)`,
    )
    .pluck();
  const ofOther = ['planned_move', 'picture'].map((table) =>
    db.prepare(`UPDATE ${table} SET stack_id = ?, version = version + 1 WHERE stack_id = ?`),
  );
  const inUse = db.prepare<[], number>(`SELECT s.id FROM stack s ${CLOSED_STACK_IN_USE}`).pluck();
  return {
    add: recordAdder(db, 'stack', columns),
    edit: recordEditor(db, 'stack', editColumns, get),
    /** With the moves planned for it. @returns whether nothing else is of it; else nothing was deleted */
    remove: (id: number): boolean => {
      if (unneeded.get(id) === undefined) return false;
      removePlanned.run(id);
      return remove.run(id).changes > 0;
    },
    /** Its pictures and planned moves are another's. */
    give: (id: number, intoId: number): void => {
      for (const table of ofOther) table.run(intoId, id);
    },
    /** Closed ones that have boards in the yard. */
    closedInUse: (): number[] => inUse.all(),
  };
}
