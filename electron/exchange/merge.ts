import type { Statement } from 'better-sqlite3';
import {
  type Side as Choice,
  type Clash,
  type MergedRecords,
  MOST_CLASHES_SHOWN,
  MOST_NAMES_TOLD,
  MOST_RENAMED_SHOWN,
  type Renamed,
} from '../../shared-core/contract/exchange.ts';
import { freeCode, freeName } from '../../shared-core/exchange/free-name.ts';
import {
  tableOf,
  type YardRecord,
  type YardTableName,
  yardTableNames,
} from '../../shared-core/exchange/yard-tables.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import { CLOSED_PLACE_IN_USE } from '../store/place-table.ts';
import { CLOSED_STACK_IN_USE } from '../store/stack-table.ts';
import { EVERY_YARD, uuidV5 } from '../store/uuid.ts';
import type { Db } from '../store/yard-file.ts';
import { type RecordReads, recordReads, recordWrites } from '../store/yard-records.ts';
import { cutsToCheck } from './cuts-to-check.ts';
import { deletedHere, removeDeleted } from './deleted-records.ts';
import { difference, editsOf, namedBy, saysTheSame, WITH_RECORD } from './differences.ts';
import { createLeaving } from './leaving.ts';
import { type ClashingRecord, type MergeWords, mergeWords } from './merge-words.ts';
import { mergedRecords } from './merged-records.ts';
import { movedAlike } from './moved-alike.ts';
import { movedBack } from './moved-back.ts';
import { findNewActs, rememberActs, rowsBroughtAgain } from './new-acts.ts';
import { sensorsApart } from './sensors-apart.ts';

/** What a person chose: whose version of a record holds where both edited it. */
export type Choose = (clash: string) => Choice;

/** Records that are the same though each file gave them another UUID: these fields tell. */
const SAME_BY: Partial<Record<YardTableName, readonly string[]>> = {
  species: ['id'],
  endUses: ['id'],
  boardOrigins: ['child', 'parent'],
  reservations: ['board'],
  meters: ['kind', 'deviceId'],
  confirmedSpecies: ['board'],
  settings: ['key'],
};

/** By what a person names records of which no two may have one name, while this is null. */
const NAMED_BY: Partial<Record<YardTableName, { field: string; unless: string }>> = {
  boards: { field: 'code', unless: 'archivedAt' },
  places: { field: 'name', unless: 'closedAt' },
  stacks: { field: 'name', unless: 'closedAt' },
  projects: { field: 'name', unless: 'closedAt' },
};

const valuesOf = (record: YardRecord, fields: readonly string[]): string =>
  JSON.stringify(fields.map((field) => record[field]));

const EDITED_TABLES: ReadonlySet<string> = new Set(
  yardTableNames.filter((named) => tableOf(named).way === 'edited').map((named) => tableOf(named).table),
);

/** Fields that name a record of a catalog by its id. */
const CATALOG_OF = { speciesId: 'species', endUseId: 'end_use' };

/** The tables, those whose records name others first. What a board came from says of which boards the moves are needed. */
const fromThoseThatName: readonly YardTableName[] = yardTableNames
  .toReversed()
  .flatMap((named) => (named === 'moves' ? [] : named === 'boardOrigins' ? [named, 'moves'] : named));

/** What of an own record its name depends on: it may be freed before the record is edited. */
type NameHere = YardRecord;

/** An edit of a record that both files have. */
interface EditToDo {
  mine: NameHere;
  /** The UUID of the other. */
  theirs: string;
  fields: string[];
}

/**
 * Brings the records of another yard into this one: those that are new come in; what only one of the two edited since they
 * were the same holds; what both edited is a clash, and the person chooses. To be called within an act.
 *
 * A record that one deleted and the other did not touch stays deleted, unless something names it. Of two yards of millions
 * of readings, only what is edited or named is in memory, and that by its UUID.
 *
 * @param db  the own yard's, to which the other one is attached as `theirs`
 */
export function merge(db: Db, chosen: Choose, tell: (done: number, total: number) => void): MergedRecords {
  const mine = recordReads(db);
  const writes = recordWrites(db);
  findNewActs(db);
  const again = rowsBroughtAgain(db);
  const edits = { ofMine: editsOf(db, 'main'), ofTheirs: editsOf(db, 'theirs') };
  /** A meter of both files that has another address in the other one by now, and not here. */
  const isMovedThere = (uuid: string): boolean =>
    edits.ofTheirs.hasColumn('meter', uuid, 'device_id') &&
    !edits.ofMine.hasColumn('meter', uuid, 'device_id');
  const theirs = withOwnMeters(db, recordReads(db, 'theirs'), isMovedThere);
  const clashes = firstOf<Clash>(MOST_CLASHES_SHOWN);
  const renamed = firstOf<Renamed>(MOST_RENAMED_SHOWN);
  const records = mergedRecords(db);
  const back = movedBack(db);
  const words = mergeWords(db, { mine, theirs }, records, back);
  /** Boards that were merged into each other have one answer. */
  const choose: Choose = (uuid) => chosen(records.ringOf('boards', uuid)?.[0] ?? uuid);
  const counts = { added: {} as Record<string, number>, edited: 0, deleted: {} as Record<string, number> };
  const leaving = createLeaving(db, {
    mine,
    theirs,
    edits,
    choose,
    words,
    writes,
    clash: clashes.add,
    comesAgain: again.has,
  });

  /** Of records that are edited: the UUIDs of those that come in. */
  const coming = new Map<YardTableName, string[]>();
  const toEdit = new Map<YardTableName, EditToDo[]>();
  const restated = new Map<YardTableName, YardRecord[]>();
  /** By the UUIDs of stays of sensors that come in: where the sensor is instead, as was chosen. */
  const placeOfStay = new Map<string, unknown>();
  /** Named by what comes in: these may not stay deleted. */
  const needed = new Set<string>();
  const need = (named: YardTableName, record: Record<string, unknown>): void => {
    for (const [table, uuid] of namedBy(named, record)) {
      if (EDITED_TABLES.has(table)) needed.add(`${table} ${uuid}`);
    }
    for (const [field, table] of Object.entries(CATALOG_OF)) {
      if (typeof record[field] === 'string') needed.add(`${table} ${record[field]}`);
    }
  };
  const isHere = rowsHere(db);
  const alikeOf = movedAlike(db, { mine, theirs });

  const staysDeleted = deletedHere(mine, edits, (table, name) => needed.has(`${table} ${name}`));
  // Those that name others come first, so that it is known what is needed.
  for (const named of fromThoseThatName) {
    const { way } = tableOf(named);
    if (named === 'undoneRows') continue;
    if (named === 'boardOrigins') needThoseCutOrMerged();
    if (way === 'edited') lookThrough(named);
    else lookThroughAdded(named, way === 'added' ? null : way);
  }
  // What is undone with its round goes as that does.
  coming.set('undoneRows', leaving.undoneRows());
  if (coming.get('undoneRows')?.length) counts.added.undoneRows = coming.get('undoneRows')?.length ?? 0;

  /** What comes in needs what it came from, however far back. */
  function needThoseCutOrMerged(): void {
    let before = -1;
    while (needed.size !== before) {
      before = needed.size;
      for (const origin of theirs.all('boardOrigins', 'main')) {
        if (!staysDeleted('boardOrigins', origin)) need('boardOrigins', origin);
      }
    }
  }

  function lookThrough(named: YardTableName): void {
    const same = sameBy(named);
    const atAddress = named === 'meters' ? addressesHere() : null;
    const uuids: string[] = [];
    const editing: EditToDo[] = [];
    const ringClashes = new Map<readonly string[], ClashingRecord[]>();
    for (const their of theirsOf(named)) {
      const own = mine.one(named, their.uuid) ?? same(their);
      if (own === undefined) {
        if (staysDeleted(named, their)) continue;
        uuids.push(their.uuid);
        need(named, their);
        continue;
      }
      // What a person chose here for the window stays.
      if (named === 'settings') continue;
      const { theirs: fields, clashing } = leaving.fieldsOf(
        named,
        own,
        their,
        records.withoutAlike(named, own, their, difference(named, own, their, edits)),
      );
      if (clashing.length > 0) {
        const clash = { own, their, fields: clashing, left: leaving.ofClash(named, own, their, clashing) };
        const ring = records.ringOf(named, own.uuid);
        if (ring === null) clashes.add(() => words.clashOf(named, clash));
        else ringClashes.set(ring, [...(ringClashes.get(ring) ?? []), clash]);
        if (choose(own.uuid) === 'theirs') fields.push(...clashing);
      }
      // A meter's address is another meter's here.
      const there = atAddress?.(their);
      if (there !== undefined && there.uuid !== own.uuid) {
        const ownFields = fields.filter((field) => !SAME_BY[named]?.includes(field));
        fields.splice(0, fields.length, ...ownFields);
      }
      if (fields.length === 0) continue;
      if (fields.includes('record') && own[WITH_RECORD] !== their[WITH_RECORD]) fields.push(WITH_RECORD);
      if (leaving.isMore(named, own, their, fields)) counts.edited++;
      editing.push({ mine: nameHere(named, own), theirs: their.uuid, fields });
      need(named, Object.fromEntries(fields.map((field) => [field, their[field]])));
    }
    if (named === 'airSensorStays') editing.push(...whereSensorsAre());
    for (const [ring, clashing] of ringClashes) clashes.add(() => words.clashOfRing(ring, clashing));
    coming.set(named, uuids);
    if (uuids.length > 0) counts.added[named] = uuids.length;
    toEdit.set(named, editing);
  }

  /** Where each put one sensor elsewhere. The one that is chosen is the place of the later stay. */
  function whereSensorsAre(): EditToDo[] {
    return sensorsApart({ mine, theirs }).flatMap(({ own, their, last }) => {
      clashes.add(() => words.clashOf('airSensorStays', { own, their, fields: ['place'], left: null }));
      const chosen = choose(own.uuid) === 'theirs' ? their : own;
      if (chosen === last) return [];
      if (last === own) return [{ mine: { uuid: own.uuid }, theirs: their.uuid, fields: ['place'] }];
      placeOfStay.set(their.uuid, own.place);
      return [];
    });
  }

  /** Those of a person, and those of a catalog that are again as they came with the program, as an edit was undone. */
  function* theirsOf(named: YardTableName): Generator<YardRecord> {
    yield* theirs.all(named);
    if (named !== 'species' && named !== 'endUses') return;
    const { table } = tableOf(named);
    const backAsTheyCame = db
      .prepare<[], string>(
        `SELECT t.uuid FROM theirs.${table} t JOIN main.${table} m ON m.uuid = t.uuid
         WHERE t.built_in = 1 AND m.built_in = 0 ORDER BY t.uuid`,
      )
      .pluck();
    for (const uuid of backAsTheyCame.all()) {
      if (edits.ofTheirs.has(table, uuid)) yield theirs.one(named, uuid) as YardRecord;
    }
  }

  /** The record of one file that one of the other is the same as, by what both have and not by their UUIDs. */
  function sameBy(named: YardTableName, reads = mine): (record: YardRecord) => YardRecord | undefined {
    const fields = SAME_BY[named];
    if (fields === undefined) return () => undefined;
    const all = new Map([...reads.all(named)].map((record) => [valuesOf(record, fields), record]));
    return (record) => {
      const found = all.get(valuesOf(record, fields));
      const isOther = named === 'meters' && found && found.uuid !== record.uuid && isMovedThere(found.uuid);
      return isOther ? undefined : found;
    };
  }

  /** The meter that has an address here. */
  function addressesHere(): (record: YardRecord) => YardRecord | undefined {
    const address = ({ kind, deviceId }: YardRecord) =>
      valuesOf({ uuid: '', kind, deviceId }, ['kind', 'deviceId']);
    const all = new Map([...mine.all('meters')].map((record) => [address(record), record]));
    return (record) => all.get(address(record));
  }

  /** Of records that are only ever added, all come in. Where the newest holds and both have one, the chosen is said again. */
  function lookThroughAdded(named: YardTableName, key: readonly string[] | null): void {
    let count = 0;
    const newest = new Map<string, YardRecord>();
    const holds = { mine: holding(db, 'main', named), theirs: holding(db, 'theirs', named) };
    for (const record of newOf(named)) {
      count++;
      need(named, record);
      // Nothing here is about what is not here. What a sensor logged is about no place.
      const about = key === null ? [] : namedBy(named, record, key);
      const mayClash = about.length > 0 && about.every(([table, uuid]) => isHere(table, uuid));
      if (key && mayClash && holds.theirs(record)) newest.set(valuesOf(record, key), record);
    }
    if (count > 0) counts.added[named] = count;
    if (key === null || newest.size === 0) return;
    const ownNewest = new Map<string, YardRecord>();
    for (const record of mine.all(named, 'theirs')) {
      const group = valuesOf(record, key);
      if (newest.has(group) && holds.mine(record)) ownNewest.set(group, record);
    }
    const said: YardRecord[] = [];
    const replaced: YardRecord[] = [];
    for (const [group, own] of ownNewest) {
      const their = newest.get(group) as YardRecord;
      if (saysTheSame(own, their)) continue;
      const fields = Object.keys(own).filter(
        (field) => !saysTheSame({ uuid: '', [field]: own[field] }, { uuid: '', [field]: their[field] }),
      );
      const alike = named === 'amendments' ? alikeOf(own, their) : null;
      if (alike === null) clashes.add(() => words.clashOf(named, { own, their, fields, left: null }));
      const chosen = alike ?? (choose(own.uuid) === 'theirs' ? their : own);
      if (alike === null && chosen === their) counts.edited++;
      if (named === 'airLogs') {
        replaced.push(replacedAir(chosen === own ? their : own));
        continue;
      }
      // The same in whichever file it is done.
      const uuid = uuidV5(EVERY_YARD, `again:${[own.uuid, their.uuid].sort().join(':')}:${chosen.uuid}`);
      said.push({ ...chosen, uuid });
    }
    restated.set(named, said);
    if (named === 'airLogs') restated.set('airExclusions', replaced);
  }

  /** What is only ever added, and does not hold here. */
  function* newOf(named: YardTableName): Generator<YardRecord> {
    for (const uuid of again.of(named)) yield theirs.one(named, uuid) as YardRecord;
    yield* theirs.all(named, 'main');
  }

  /** What comes in of a table. */
  function* comingOf(named: YardTableName): Generator<YardRecord> {
    const uuids = coming.get(named);
    if (uuids === undefined) yield* newOf(named);
    else for (const uuid of uuids) yield theirs.one(named, uuid) as YardRecord;
  }

  const total = yardTableNames.reduce(
    (sum, named) => sum + (counts.added[named] ?? 0) + (toEdit.get(named)?.length ?? 0),
    0,
  );
  let done = 0;
  const step = (): void => {
    if (++done % 500 === 0) tell(done, total);
  };
  const names = namesOf(db);
  for (const named of yardTableNames) {
    const editing = toEdit.get(named) ?? [];
    names.free(named, editing);
    for (const record of counts.added[named] === undefined ? [] : comingOf(named)) {
      if (again.has(record.uuid)) writes.remove('undoneRows', record.uuid);
      else writes.add(named, fitting(named, record, names.fit(named, record, renamed.add)));
      step();
    }
    for (const { mine: own, theirs: uuid, fields } of editing) {
      const their = theirs.one(named, uuid) as YardRecord;
      const changed = Object.fromEntries(fields.map((field) => [field, their[field]]));
      const { [NAMED_BY[named]?.field ?? '']: _, ...rest } = changed;
      const after = { ...own, ...changed };
      writes.edit(named, own.uuid, { ...rest, ...names.fit(named, after, renamed.add) });
      step();
    }
    for (const record of restated.get(named) ?? []) {
      // The same was chosen before, and that was undone.
      if (mine.one(named, record.uuid)) writes.remove('undoneRows', record.uuid);
      else writes.add(named, fitting(named, record, {}));
    }
  }
  leaving.finish();
  const madeAgain = (named: YardTableName) => sameBy(named, theirs);
  removeDeleted(db, mine, writes, edits, madeAgain, (named, record) => {
    if (!leaving.goes(named, record)) counts.deleted[named] = (counts.deleted[named] ?? 0) + 1;
  });
  const alsoCut = records.part(writes, (record) => choose(record) === 'theirs', bringBack);
  reopenThoseInUse();
  back.move(mine, writes);
  rememberActs(db);
  const { undoneRows: _, ...added } = counts.added;
  return {
    ...counts,
    added,
    leaves: leaving.told(),
    leaveCount: leaving.count(),
    cuts: cutsToCheck(db, alsoCut),
    ...otherValues(db, { mine, theirs }, words),
    clashes: clashes.first,
    clashCount: clashes.count(),
    renamed: renamed.first,
    renamedCount: renamed.count(),
  };

  /** A record that is no longer merged into another. */
  function bringBack(uuid: string): void {
    const record = mine.one('boards', uuid) as YardRecord;
    const back = { ...record, archivedAt: null, archivedWhy: null };
    writes.edit('boards', uuid, {
      archivedAt: null,
      archivedWhy: null,
      ...names.fit('boards', back, renamed.add),
    });
    leaving.staysAfterAll(record);
  }

  /** Where boards of the one file are in what the other closed, that is open again. */
  function reopenThoseInUse(): void {
    const inUse = {
      stacks: `SELECT s.uuid FROM stack s ${CLOSED_STACK_IN_USE}`,
      places: `SELECT p.uuid FROM place p ${CLOSED_PLACE_IN_USE}`,
    };
    // A place comes after its stacks.
    for (const named of ['stacks', 'places'] as const) {
      for (const uuid of db.prepare<[], string>(inUse[named]).pluck().all()) {
        const open = { ...(mine.one(named, uuid) as YardRecord), closedAt: null };
        writes.edit(named, uuid, { closedAt: null, ...names.fit(named, open, renamed.add) });
      }
    }
  }

  /** A version of a meter's profile comes after those that are there. */
  function fitting(named: YardTableName, record: YardRecord, name: Record<string, unknown>): YardRecord {
    const place = placeOfStay.get(record.uuid);
    if (place !== undefined) return { ...record, place };
    if (named !== 'meterProfiles') return { ...record, ...name };
    const version = db
      .prepare<[unknown], number>(
        `SELECT coalesce(max(version), 0) FROM main.meter_profile
         WHERE meter_id IS (SELECT id FROM main.meter WHERE uuid = ?)`,
      )
      .pluck()
      .get(record.meter);
    return { ...record, version: Math.max(Number(record.version), (version ?? 0) + 1) };
  }
}

/**
 * The records of the other yard, which name a meter by the UUID that it has here: one that was met there by itself, at an
 * address that a meter of this yard has by now.
 */
function withOwnMeters(db: Db, reads: RecordReads, isMovedThere: (uuid: string) => boolean): RecordReads {
  const own = new Map(
    db
      .prepare<[], [string, string]>(
        `SELECT t.uuid, m.uuid FROM theirs.meter t JOIN main.meter m ON m.kind = t.kind AND m.device_id = t.device_id
         WHERE t.uuid <> m.uuid AND t.uuid NOT IN (SELECT uuid FROM main.meter)`,
      )
      .raw()
      .all()
      .filter(([, uuid]) => !isMovedThere(uuid)),
  );
  const named = (record: YardRecord): YardRecord => {
    const uuid = typeof record.meter === 'string' ? own.get(record.meter) : undefined;
    return uuid === undefined ? record : { ...record, meter: uuid };
  };
  return {
    ...reads,
    *all(table, unlessIn) {
      for (const record of reads.all(table, unlessIn)) yield named(record);
    },
    one(table, uuid) {
      const record = reads.one(table, uuid);
      return record && named(record);
    },
  };
}

function nameHere(named: YardTableName, own: YardRecord): NameHere {
  const by = NAMED_BY[named];
  return by ? { uuid: own.uuid, [by.field]: own[by.field], [by.unless]: own[by.unless] } : { uuid: own.uuid };
}

/** Whether the own yard has a row of that UUID. */
function rowsHere(db: Db): (table: string, uuid: string) => boolean {
  const finding = new Map<string, Statement<[string]>>();
  return (table, uuid) => {
    const find = finding.get(table) ?? db.prepare(`SELECT 1 FROM main.${table} WHERE uuid = ?`);
    finding.set(table, find);
    return find.get(uuid) !== undefined;
  };
}

/** Says of typed air that it was replaced, as in whichever file the other value is chosen. */
const replacedAir = ({ uuid, place }: YardRecord): YardRecord => ({
  uuid: uuidV5(EVERY_YARD, `replaced:${uuid}`),
  place,
  day: null,
  log: uuid,
});

/** Whether a record that was added was not undone, nor, where it is typed air, deleted or replaced. */
function holding(db: Db, side: 'main' | 'theirs', named: YardTableName): (record: YardRecord) => boolean {
  const replaced = `UNION ALL SELECT 1 FROM ${side}.air_log l JOIN ${side}.air_exclusion x ON x.log_id = l.id
    WHERE l.uuid = @uuid`;
  const undone = db.prepare<{ uuid: string }>(
    `SELECT 1 FROM ${side}.undone_row WHERE uuid = @uuid ${named === 'airLogs' ? replaced : ''}`,
  );
  return ({ uuid }) => undone.get({ uuid }) === undefined;
}

/** The first of many, and how many there are. */
function firstOf<T>(most: number) {
  const first: T[] = [];
  let all = 0;
  return {
    first,
    count: (): number => all,
    add: (make: () => T): void => {
      if (++all <= most) first.push(make());
    },
  };
}

/** Names of which no two records may have one. */
function namesOf(db: Db) {
  return {
    /** Takes the names from records that get others, so that two can change theirs for each other's. */
    free: (named: YardTableName, editing: readonly EditToDo[]): void => {
      if (named === 'meters') {
        const leave = db.prepare(`UPDATE meter SET device_id = '~' || uuid WHERE uuid = ?`);
        for (const { mine, fields } of editing) if (fields.includes('deviceId')) leave.run(mine.uuid);
      }
      const by = NAMED_BY[named];
      if (by === undefined) return;
      const set = db.prepare(`UPDATE ${tableOf(named).table} SET ${by.field} = '~' || uuid WHERE uuid = ?`);
      for (const { mine, fields } of editing) {
        if (fields.includes(by.field) || fields.includes(by.unless)) set.run(mine.uuid);
      }
    },
    /** The record's name, or the nearest free one where that is taken here; nothing for a record without one. */
    fit: (
      named: YardTableName,
      record: YardRecord,
      tell: (renamed: () => Renamed) => void,
    ): Record<string, string> => {
      const by = NAMED_BY[named];
      if (by === undefined) return {};
      const given = String(record[by.field]);
      if (record[by.unless] !== null) return { [by.field]: given };
      const unless = by.unless === 'archivedAt' ? 'archived_at' : 'closed_at';
      const taken = db.prepare(
        `SELECT 1 FROM ${tableOf(named).table} WHERE ${by.field} = ? AND ${unless} IS NULL AND uuid <> ?`,
      );
      const isTaken = (name: string): boolean => taken.get(name, record.uuid) !== undefined;
      const fit = (named === 'boards' ? freeCode : freeName)(given, isTaken);
      if (fit !== given) tell(() => ({ tableName: named, from: given, to: fit }));
      return { [by.field]: fit };
    },
  };
}

/** Of which the file may say something else than the yard, though nobody can edit them: what is compared of them. */
const NEVER_EDITED: readonly [YardTableName, string, string][] = [
  ['readings', 'reading', 'raw'],
  ['ovenWeights', 'oven_weight', 'grams'],
  ['sampleWeights', 'sample_weight', 'kg'],
];

/** Records of which a file that somebody wrote in says something else than was measured. Those here stay. */
function otherValues(
  db: Db,
  reads: { mine: RecordReads; theirs: RecordReads },
  words: MergeWords,
): Pick<MergedRecords, 'otherValues' | 'otherValueCount'> {
  const found: Message[] = [];
  let count = 0;
  for (const [named, table, column] of NEVER_EDITED) {
    const from = `FROM theirs.${table} t JOIN main.${table} m ON m.uuid = t.uuid WHERE t.${column} <> m.${column}`;
    const uuids = db.prepare<[], string>(`SELECT t.uuid ${from} LIMIT ${MOST_NAMES_TOLD}`).pluck().all();
    if (uuids.length > 0) count += Number(db.prepare(`SELECT count(*) ${from}`).pluck().get());
    for (const uuid of uuids.slice(0, MOST_NAMES_TOLD - found.length)) {
      const record = words.recordOf(named, reads.mine.one(named, uuid) as YardRecord);
      const value = words.measured(named, reads.theirs.one(named, uuid) as YardRecord);
      found.push(message('merge.other-value', { record, value }));
    }
  }
  return { otherValues: found, otherValueCount: count };
}
