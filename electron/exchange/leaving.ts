import { type Clash, otherSide } from '../../shared-core/contract/exchange.ts';
import {
  type Field,
  namedOfTable,
  tableOf,
  type YardRecord,
  type YardTableName,
} from '../../shared-core/exchange/yard-tables.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import type { Db } from '../store/yard-file.ts';
import { columnOfField, type RecordReads, type RecordWrites } from '../store/yard-records.ts';
import type { Difference, Edits, Side } from './differences.ts';
import type { Choose } from './merge.ts';
import { firstNames, type Left, type MergeWords, type WentOn } from './merge-words.ts';
import { usesOf } from './uses.ts';

/** Fields by which a record leaves the lists; the first says since when. */
type Way = readonly [string, ...string[]];

/** The ways in which a record may leave. */
const LEFT_BY: Partial<Record<YardTableName, readonly Way[]>> = {
  boards: [['archivedAt', 'archivedWhy']],
  stacks: [['closedAt']],
  places: [['closedAt']],
  projects: [['closedAt']],
  testBlocks: [['closedAt']],
  rounds: [['undoneAt']],
  meters: [['undoneAt'], ['closedAt']],
  species: [['undoneAt']],
  endUses: [['undoneAt']],
};
const waysOf = (named: YardTableName): readonly Way[] => LEFT_BY[named] ?? [];

/** In which way one of the two let it go; the first where neither did, or both. */
function wayLeft(named: YardTableName, own: YardRecord, their: YardRecord): Way | undefined {
  const ways = waysOf(named);
  return ways.find(([since]) => (own[since] === null) !== (their[since] === null)) ?? ways[0];
}

/** Kinds of records whose names are listed when they leave. Others are only counted. */
const TOLD = ['boards', 'stacks', 'places', 'projects', 'rounds', 'readings'] as const;
type Told = (typeof TOLD)[number];
const isTold = (named: YardTableName): named is Told => TOLD.some((each) => each === named);

/** A round that one of the two files undid: in which file, by which act, and whether lists still show it after the merge. */
interface RoundLeft {
  by: 'mine' | 'theirs';
  act: number | null;
  stays: boolean;
}

const isMerged = ({ archivedWhy }: YardRecord): boolean =>
  (archivedWhy as { code?: unknown } | null)?.code === 'merged';
const picked = (record: YardRecord, fields: readonly string[]): Record<string, unknown> =>
  Object.fromEntries(fields.map((field) => [field, record[field]]));

/**
 * What leaves the lists where two yards are brought together. What one let go, and the other left alone, goes. What the
 * other went on with is a clash: nobody's readings, notes or edits leave without a question.
 */
export function createLeaving(
  db: Db,
  {
    mine,
    theirs,
    edits,
    choose,
    words,
    writes,
    clash,
    comesAgain,
  }: {
    mine: RecordReads;
    theirs: RecordReads;
    edits: Edits;
    choose: Choose;
    words: MergeWords;
    writes: RecordWrites;
    clash: (make: () => Clash) => void;
    /** Of a row that is undone here only because the act that brought it was. */
    comesAgain: (uuid: string) => boolean;
  },
) {
  const uses = { mine: usesOf(db, 'main'), theirs: usesOf(db, 'theirs') };
  const rounds = new Map<string, RoundLeft>();
  /** Of each kind, how many leave, and the names of all that are listed. */
  const left = new Map<Told | 'others', { count: number; names: Map<string, Message | string> }>();
  const toldBoards = new Set<string>();
  /** What stays though they let it go. It is said in this act, so that the two files agree about it from here on. */
  const kept: { named: YardTableName; uuid: string; gone: object; here: object }[] = [];
  const keptRows: YardRecord[] = [];
  /** What was undone here and comes back. */
  const backRows: string[] = [];

  const columnsOf = (named: YardTableName, fields: readonly string[]): string[] =>
    fields.map((field) => columnOfField(field, tableOf(named).fields[field] as Field));

  function wentOn(keeper: 'mine' | 'theirs', named: YardTableName, uuid: string): WentOn {
    const { table } = tableOf(named);
    const columns = columnsOf(named, waysOf(named).flat());
    return {
      uses: uses[keeper](table, uuid),
      isEdited: edits[keeper === 'mine' ? 'ofMine' : 'ofTheirs'].hasBut(table, uuid, [...columns, 'version']),
    };
  }
  const isAny = ({ uses, isEdited }: WentOn): boolean => isEdited || uses.size > 0;

  /** Which of the two let a record go that is in the lists of the other; null where neither did, or both. */
  function whoLeft(named: YardTableName, own: YardRecord, their: YardRecord): 'mine' | 'theirs' | null {
    const since = wayLeft(named, own, their)?.[0];
    if (since === undefined || (own[since] === null) === (their[since] === null)) return null;
    return own[since] === null ? 'theirs' : 'mine';
  }

  function tell(named: YardTableName, record: YardRecord): void {
    const kind = isTold(named) ? named : 'others';
    const of = left.get(kind) ?? { count: 0, names: new Map<string, Message | string>() };
    left.set(kind, of);
    of.count++;
    if (named === 'boards') toldBoards.add(record.uuid);
    if (kind === 'others') return;
    const name = words.shortName(named, record);
    of.names.set(JSON.stringify(name), name);
  }

  const actOfUndoing = (side: Side, table: string) =>
    db
      .prepare<[string], number | null>(
        `SELECT max(act_id) FROM ${side}.act_change WHERE row_uuid = ? AND in_table = '${table}'
         AND new_values IS NOT NULL
         AND ${table === 'round' ? `json_extract(new_values, '$.undone_at') IS NOT NULL` : 'old_values IS NULL'}`,
      )
      .pluck();
  const acts = {
    mine: { round: actOfUndoing('main', 'round'), row: actOfUndoing('main', 'undone_row') },
    theirs: { round: actOfUndoing('theirs', 'round'), row: actOfUndoing('theirs', 'undone_row') },
  };

  /** How a record was undone with its round; undefined where it was undone on its own. */
  function withRound(by: 'mine' | 'theirs', record: YardRecord): RoundLeft | undefined {
    const round = rounds.get(String(record.round));
    const isOfIt = round?.by === by && round.act === (acts[by].row.get(record.uuid) ?? null);
    return isOfIt ? round : undefined;
  }

  /**
   * Whether a record that one of the two undid stays in the lists: with its round, or where the other went on with it and
   * that was chosen.
   */
  function undoneBy(by: 'mine' | 'theirs', named: YardTableName, record: YardRecord) {
    const round = withRound(by, record);
    if (round) return { stays: round.stays, isWithRound: true };
    const keeper = otherSide(by);
    const on = wentOn(keeper, named, record.uuid);
    if (!isAny(on)) return { stays: false, isWithRound: false };
    clash(() => words.undoneClash(named, record, by, on));
    return { stays: choose(record.uuid) === keeper, isWithRound: false };
  }

  function theirUndoneRows(): string[] {
    const coming: string[] = [];
    for (const their of theirs.all('undoneRows', 'main')) {
      if (
        edits.ofMine.wasDeleted('undone_row', their.uuid) &&
        !edits.ofTheirs.has('undone_row', their.uuid)
      ) {
        continue;
      }
      const named = namedOfTable(their.inTable);
      const record = named && mine.one(named, their.uuid);
      if (named === undefined || record === undefined) {
        coming.push(their.uuid);
        continue;
      }
      const { stays, isWithRound } = undoneBy('theirs', named, record);
      if (stays) keptRows.push(their);
      else {
        coming.push(their.uuid);
        if (named === 'readings' || !isWithRound) tell(named, record);
      }
    }
    return coming;
  }

  function myUndoneRows(): void {
    for (const own of mine.all('undoneRows', 'theirs')) {
      if (comesAgain(own.uuid) || edits.ofTheirs.wasDeleted('undone_row', own.uuid)) continue;
      const named = namedOfTable(own.inTable);
      const record = named && theirs.one(named, own.uuid);
      if (named !== undefined && record !== undefined && undoneBy('mine', named, record).stays) {
        backRows.push(own.uuid);
      }
    }
  }

  return {
    /** Whose edits of a record hold, once it was asked who goes on with what the other let go. */
    fieldsOf: (named: YardTableName, own: YardRecord, their: YardRecord, found: Difference): Difference => {
      const by = wayLeft(named, own, their);
      const who = whoLeft(named, own, their);
      if (by === undefined || who === null) return found;
      const [since] = by;
      let { theirs: fields, clashing } = found;
      const isOneSided = !clashing.includes(since) && (who === 'theirs') === fields.includes(since);
      if (isOneSided && isAny(wentOn(otherSide(who), named, own.uuid))) {
        fields = fields.filter((field) => !by.includes(field));
        clashing = [...clashing.filter((field) => !by.includes(field)), ...by];
      }
      const isTheirs = clashing.includes(since) ? choose(own.uuid) === 'theirs' : fields.includes(since);
      const stays = (who === 'mine') === isTheirs;
      if (named === 'rounds') {
        rounds.set(own.uuid, { by: who, act: acts[who].round.get(own.uuid) ?? null, stays });
      }
      if (who === 'theirs' && !stays) tell(named, own);
      const [column] = columnsOf(named, [since]) as [string];
      if (who === 'theirs' && stays && !edits.ofMine.hasColumn(tableOf(named).table, own.uuid, column)) {
        kept.push({ named, uuid: own.uuid, gone: picked(their, by), here: picked(own, by) });
      }
      return { theirs: fields, clashing };
    },
    /** Who let a record go, and how the other went on with it; null where that is not what they differ in, or all is said by its fields. */
    ofClash: (
      named: YardTableName,
      own: YardRecord,
      their: YardRecord,
      clashing: readonly string[],
    ): Left | null => {
      const by = wayLeft(named, own, their);
      const who = whoLeft(named, own, their);
      if (by === undefined) return null;
      if (who !== null) return { who, by, on: wentOn(otherSide(who), named, own.uuid) };
      const isMergedInOne = isMerged(own) || isMerged(their);
      return isMergedInOne && clashing.includes(by[0]) ? { who: 'both', by } : null;
    },
    /** Whether an edit is more than that the record leaves. */
    isMore: (named: YardTableName, own: YardRecord, their: YardRecord, fields: readonly string[]): boolean =>
      whoLeft(named, own, their) !== 'theirs' ||
      fields.some((field) => !wayLeft(named, own, their)?.includes(field)),
    /** The UUIDs of what is undone there and now here as well. To be asked for once all rounds were gone through. */
    undoneRows: (): string[] => {
      myUndoneRows();
      return theirUndoneRows();
    },
    /** Lists a record that they deleted. @returns false for a kind that is only counted */
    goes: (named: YardTableName, record: YardRecord): boolean => {
      if (!isTold(named)) return false;
      tell(named, record);
      return true;
    },
    /** Takes a board from those that leave. */
    staysAfterAll: (board: YardRecord): void => {
      const of = left.get('boards');
      if (of === undefined || !toldBoards.delete(board.uuid)) return;
      of.count--;
      of.names.delete(JSON.stringify(words.shortName('boards', board)));
      if (of.count === 0) left.delete('boards');
    },
    /** Writes what stays, and what comes back. */
    finish: (): void => {
      for (const { named, uuid, gone, here } of kept) {
        writes.edit(named, uuid, { ...gone });
        writes.edit(named, uuid, { ...here });
      }
      for (const row of keptRows) {
        writes.add('undoneRows', row);
        writes.remove('undoneRows', row.uuid);
      }
      for (const uuid of backRows) writes.remove('undoneRows', uuid);
    },
    /** How many records leave. */
    count: (): number => [...left.values()].reduce((sum, { count }) => sum + count, 0),
    /** A sentence for each kind of record that leaves. */
    told: (): Message[] => {
      const sentences = TOLD.flatMap((kind): Message[] => {
        const of = left.get(kind);
        if (of === undefined) return [];
        const { count, names } = of;
        return [message(`merge.leave.${kind}`, { count, names: firstNames([...names.values()]) })];
      });
      const others = left.get('others')?.count ?? 0;
      return others === 0 ? sentences : [...sentences, message('merge.leave.others', { count: others })];
    },
  };
}
