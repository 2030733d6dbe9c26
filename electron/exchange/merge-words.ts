import { archivedWhySchema } from '../../shared-core/contract/archive.ts';
import { type Clash, MOST_NAMES_TOLD } from '../../shared-core/contract/exchange.ts';
import { clashField } from '../../shared-core/exchange/clash-words.ts';
import { countsInWords } from '../../shared-core/exchange/merge-counts.ts';
import {
  namedOfTable,
  tableOf,
  type YardRecord,
  type YardTableName,
} from '../../shared-core/exchange/yard-tables.ts';
import { dateMessage } from '../../shared-core/record-words/date-message.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import { recordMessage } from '../app/history/record-message.ts';
import type { Db } from '../store/yard-file.ts';
import type { RecordReads } from '../store/yard-records.ts';
import { namedBy } from './differences.ts';
import type { MergedRecords } from './merged-records.ts';
import { toOf } from './moved-alike.ts';
import type { MovedBack } from './moved-back.ts';
import type { Uses } from './uses.ts';

/** How somebody went on with a record. */
export interface WentOn {
  uses: Uses;
  /** Its own fields were edited. */
  isEdited: boolean;
}

/** Who let a record go by these fields, and how the other went on with it; or that both did, each otherwise. */
export type Left =
  | { who: 'mine' | 'theirs'; by: readonly string[]; on: WentOn }
  | { who: 'both'; by: readonly string[] };

/** A record that both changed: in which fields the two differ. */
export interface ClashingRecord {
  own: YardRecord;
  their: YardRecord;
  fields: readonly string[];
  /** Where it left the lists. */
  left: Left | null;
}

/** Names in a sentence: of many, the first, and that there are others. */
export const firstNames = (names: readonly (Message | string)[]): readonly (Message | string)[] =>
  names.length <= MOST_NAMES_TOLD ? names : [...names.slice(0, MOST_NAMES_TOLD), message('merge.leave.more')];

/** The sentences about records of two yards in a merge. */
export function mergeWords(
  db: Db,
  { mine, theirs }: { mine: RecordReads; theirs: RecordReads },
  { intoCode }: Pick<MergedRecords, 'intoCode'>,
  movedBack: Pick<MovedBack, 'from'>,
) {
  const catalogName = (['main', 'theirs'] as const).map((side) => ({
    speciesId: db.prepare<[unknown], string | null>(`SELECT name FROM ${side}.species WHERE id = ?`).pluck(),
    endUseId: db.prepare<[unknown], string | null>(`SELECT name FROM ${side}.end_use WHERE id = ?`).pluck(),
  }));
  const nameInCatalog = (field: 'speciesId' | 'endUseId', id: unknown): string =>
    catalogName.map((names) => names[field].get(id)).find((name) => name != null) ?? String(id);

  function named(table: string, uuid: unknown): YardRecord | undefined {
    const of = namedOfTable(table) as YardTableName;
    return mine.one(of, String(uuid)) ?? theirs.one(of, String(uuid));
  }

  /** By what a person knows it: its own name, or that of what it is about. */
  function nameOf(of: YardTableName, record: YardRecord): string | null {
    const own = record.code ?? record.name ?? record.piece;
    if (typeof own === 'string') return own;
    if (typeof record.speciesId === 'string' && of !== 'confirmedSpecies') {
      return nameInCatalog('speciesId', record.speciesId);
    }
    for (const [table, uuid] of namedBy(of, record)) {
      const found = named(table, uuid);
      const kind = namedOfTable(table) as YardTableName;
      // A correction of a reading is of its board.
      const through = found && table === 'reading' ? named('board', found.board) : found;
      const name = through && nameOf(through === found ? kind : 'boards', through);
      if (name != null) return name;
    }
    return null;
  }

  function recordOf(of: YardTableName, record: YardRecord): Message {
    if (of === 'rounds') return roundOf(record);
    if (of === 'airLogs') return airOf(record);
    const corrected =
      of === 'amendments' && toOf(record) !== null ? named('reading', record.reading) : undefined;
    if (corrected) return recordOf('readings', corrected);
    if (of === 'readings') {
      const recordName = nameOf('boards', boardOf(record)) ?? '…';
      return message('merge.record.reading', { reading: measured(of, record), recordName });
    }
    return recordMessage({ inTable: tableOf(of).table, name: nameOf(of, record) });
  }
  /** What was measured. */
  function measured(of: YardTableName, { raw, unit, grams, kg }: YardRecord): Message {
    if (of === 'ovenWeights') return message('merge.value.grams', { valueGrams: Number(grams) });
    if (of === 'sampleWeights') return message('merge.value.kg', { valueKg: Number(kg) });
    return unit === 'ohm'
      ? message('act.value.ohm', { rawOhm: Number(raw) })
      : message('act.value.pct', { rawPct: Number(raw) });
  }
  const boardOf = (reading: YardRecord): YardRecord => named('board', reading.board) ?? { uuid: '' };
  const airOf = ({ place, at }: YardRecord): Message =>
    message('merge.record.air', {
      placeName: String(named('place', place)?.name ?? '…'),
      measuredOn: String(at),
    });
  const airIn = ({ tempC, rh }: YardRecord): Message =>
    message('merge.value.air', { airTempC: Number(tempC), humidityRhPct: 100 * Number(rh) });
  function roundOf(round: YardRecord): Message {
    const stack = named('stack', round.stack);
    return message('merge.record.round', {
      recordName: String(stack?.name ?? '…'),
      date: dateMessage(String(round.startedAt), round.datedBy === 'day'),
    });
  }

  /** A name in place of the UUID of another record, or of its id in a catalog; any other value as it is. */
  function withName(of: YardTableName, field: string, value: unknown): unknown {
    if (value === null || value === undefined) return null;
    if (field === 'speciesId' || field === 'endUseId') return nameInCatalog(field, value);
    const kind = tableOf(of).fields[field]?.kind;
    if (typeof kind !== 'object') return value;
    const found = named(kind.of, value);
    return found === undefined ? null : nameOf(namedOfTable(kind.of) as YardTableName, found);
  }

  /** What became of it in either. */
  function versions(
    of: YardTableName,
    own: YardRecord,
    their: YardRecord,
    left: Left,
  ): Pick<Clash, 'mine' | 'theirs'> {
    if (left.who === 'both') return { mine: [gone(of, own, 'mine')], theirs: [gone(of, their, 'theirs')] };
    const record = left.who === 'mine' ? own : their;
    const back = of === 'boards' ? goingBack(record, left.who) : [];
    return whereOneLeft(left.who, [gone(of, record, left.who), ...back], left.on);
  }
  function whereOneLeft(
    who: 'mine' | 'theirs',
    gone: readonly Message[],
    on: WentOn,
  ): Pick<Clash, 'mine' | 'theirs'> {
    const here = [message('merge.state.here'), ...wentOnInWords(on)];
    return who === 'mine' ? { mine: [...gone], theirs: here } : { mine: here, theirs: [...gone] };
  }
  /** Where readings go that were moved to a board which stays deleted. */
  function goingBack(board: YardRecord, who: 'mine' | 'theirs'): Message[] {
    const codes = movedBack.from(who === 'mine' ? 'theirs' : 'main', board.uuid);
    if (codes.length === 0) return [];
    const names = firstNames([...new Set(codes)].toSorted());
    return [message('merge.state.moved-back', { readings: codes.length, names })];
  }
  function wentOnInWords({ uses, isEdited }: WentOn): Message[] {
    const parts = countsInWords(Object.fromEntries(uses));
    const all = isEdited ? [...parts, message('merge.count.edits')] : parts;
    return all.length === 0 ? [] : [message('merge.since', { parts: all })];
  }

  function gone(of: YardTableName, record: YardRecord, who: 'mine' | 'theirs'): Message {
    const { archivedAt, archivedWhy, closedAt, undoneAt } = record;
    if (of === 'boards') {
      const { code } = archivedWhySchema.catch({ code: 'unknown', note: '' }).parse(archivedWhy);
      const into = code === 'merged' ? intoCode(who, record.uuid) : undefined;
      const why =
        into === undefined
          ? message(`archived.${code}`)
          : message('archived.merged-into', { intoCode: into });
      return message('archived.on', { why, leftOn: String(archivedAt) });
    }
    if (typeof closedAt === 'string')
      return message(of === 'meters' ? 'merge.state.removed' : 'merge.state.closed', { closedOn: closedAt });
    return message('merge.state.undone', { undoneOn: String(undoneAt) });
  }

  const withoutLeaving = (fields: readonly string[], left: Left | null): string[] =>
    fields.filter((field) => !left?.by.includes(field));
  /** Where a reading is by what was said of it last: on its own board, excluded there, or on another. */
  function whereNow(excluded: YardRecord): Message {
    const { label, shown } = clashField('value', excluded.value, excluded);
    const to = toOf(excluded);
    if (to === null && excluded.value !== null)
      return message('merge.field-value', { field: label, value: shown ?? '' });
    const reading = named('reading', to ?? excluded.reading) ?? { uuid: '' };
    const recordName = nameOf('boards', boardOf(reading)) ?? '…';
    return message('merge.value.on-board', { reading: measured('readings', reading), recordName });
  }
  /** Both values of fields in which the two differ. */
  function valuesOf(
    of: YardTableName,
    own: YardRecord,
    their: YardRecord,
    fields: readonly string[],
  ): Clash['fields'] {
    if (of === 'amendments' && (toOf(own) ?? toOf(their)) !== null) {
      return [{ label: message('merge.field.value'), mine: whereNow(own), theirs: whereNow(their) }];
    }
    if (of === 'airLogs') return [{ label: message('places.air'), mine: airIn(own), theirs: airIn(their) }];
    return fields.map((field) => {
      const { label, shown } = clashField(field, withName(of, field, own[field]), own);
      return {
        label,
        mine: shown,
        theirs: clashField(field, withName(of, field, their[field]), their).shown,
      };
    });
  }

  return {
    recordOf,
    measured,
    /** As it is named among others of its kind. */
    shortName: (of: YardTableName, record: YardRecord): Message | string => {
      if (of === 'rounds') return roundOf(record);
      return nameOf(of, of === 'readings' ? boardOf(record) : record) ?? '…';
    },
    clashOf: (of: YardTableName, { own, their, fields, left }: ClashingRecord): Clash => ({
      id: own.uuid,
      record: recordOf(of, own),
      fields: valuesOf(of, own, their, withoutLeaving(fields, left)),
      ...(left === null ? { mine: [], theirs: [] } : versions(of, own, their, left)),
    }),
    /**
     * Boards that the two merged into each other: whoever stays, the others are merged into it. All that either merged is
     * told, as a part of it alone does not say which board stays.
     * @param ring  their UUIDs; the question is named by the first
     */
    clashOfRing: (ring: readonly string[], clashing: readonly ClashingRecord[]): Clash => {
      const boards = ring
        .flatMap((uuid) => named('board', uuid) ?? [])
        .toSorted((a, b) => String(a.code).localeCompare(String(b.code)));
      const merges = (who: 'mine' | 'theirs', { one }: RecordReads): Message[] =>
        boards.flatMap(({ uuid, code }) => {
          const into = intoCode(who, uuid);
          const leftOn = String(one('boards', uuid)?.archivedAt);
          return into === undefined
            ? []
            : message('merge.state.merged', { recordName: String(code), leftOn, intoCode: into });
        });
      return {
        id: String(ring[0]),
        record: message('merge.record.boards', { recordNames: boards.map(({ code }) => String(code)) }),
        fields: clashing.flatMap(({ own, their, fields, left }) =>
          valuesOf('boards', own, their, withoutLeaving(fields, left)).map(({ label, ...values }) => ({
            label: message('merge.field-of', { recordName: String(own.code), field: label }),
            ...values,
          })),
        ),
        mine: merges('mine', mine),
        theirs: merges('theirs', theirs),
      };
    },
    /** Of a record that is never deleted: one of the two undid what added it. */
    undoneClash: (of: YardTableName, record: YardRecord, who: 'mine' | 'theirs', on: WentOn): Clash => ({
      id: record.uuid,
      record: recordOf(of, record),
      fields: [],
      ...whereOneLeft(who, [message('merge.state.undone-row')], on),
    }),
  };
}
export type MergeWords = ReturnType<typeof mergeWords>;
