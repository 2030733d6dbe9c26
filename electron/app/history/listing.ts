import type { CommandName } from '../../../shared-core/contract/requests.ts';
import { mergedActSchema, mergedLine } from '../../../shared-core/exchange/merged-act.ts';
import type { ChangedRecord, SavedValue, TableChange } from '../../../shared-core/history/act-facts.ts';
import { actLine } from '../../../shared-core/history/act-line.ts';
import { importedLine } from '../../../shared-core/import/imported.ts';
import { checkState, offBy, offShown } from '../../../shared-core/probing/readings/meter-check.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { ActSample, ListedAct } from '../../store/act-history.ts';
import { type MeterRecord, unitOf } from '../../store/meter-table.ts';
import type { YardReader } from '../../store/yard.ts';
import type { QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';

/** Columns that name a record of another table, which a person knows by its name. */
const NAMED: Readonly<Record<string, string>> = {
  species_id: 'species',
  end_use_id: 'end_use',
  place_id: 'place',
  stack_id: 'stack',
};
/** Requests that come to the stack or place which another was merged into. */
const MERGING: ReadonlySet<string> = new Set(['stacks.merge', 'places.merge'] satisfies CommandName[]);
/** Requests that only change a setting about a meter. */
const OF_METERS: Partial<Record<CommandName, 'act.meter.deleted' | 'act.meter.typing'>> = {
  'meters.delete': 'act.meter.deleted',
  'meters.typeFrom': 'act.meter.typing',
};
/** The meter that a setting names: the last of a list, or the one in use. */
function meterIn(value: SavedValue | undefined): number | null {
  const setting = typeof value === 'string' ? JSON.parse(value) : null;
  return (Array.isArray(setting) ? setting.at(-1) : setting?.meterId) ?? null;
}
/** What is at a place, or goes there. */
const PLACED: ReadonlySet<string> = new Set([
  'move',
  'planned_move',
  'stack',
  'air_sensor_stay',
  'air_log',
  'air_exclusion',
]);
/** What a row without a name belongs to, the nearest first. */
const OWNERS = [
  'board_id',
  'child_id',
  'stack_id',
  'species_id',
  'project_id',
  'meter_id',
  'sensor_id',
] as const;
const OWNER_TABLES: Readonly<Record<string, string>> = {
  board_id: 'board',
  child_id: 'board',
  stack_id: 'stack',
  species_id: 'species',
  project_id: 'project',
  meter_id: 'meter',
  sensor_id: 'air_sensor',
};

/** What else was measured a row is of, and its table. */
const MEASURED: Readonly<Record<string, string>> = {
  reading_id: 'reading',
  oven_check_id: 'oven_check',
  oven_weight_id: 'oven_weight',
  check_id: 'oven_check',
  test_block_id: 'test_block',
  meter_check_id: 'meter_check',
  sample_cut_id: 'sample_cut',
  sample_weight_id: 'sample_weight',
  section_id: 'sample_section',
  cut_id: 'sample_cut',
};

/** What a check found of the meter as it was set up then. */
function checkLine({ name, values }: ChangedRecord, version: MeterRecord): Message {
  const [recordName, unit] = [name ?? '…', unitOf(version)];
  const check = {
    right: Number(values.expected),
    shown: Number(values.shown),
    tolerance: Number(values.tolerance),
  };
  if (checkState(unit, check, version.off) === 'right')
    return message('act.meter-check.right', { recordName });
  const off = Math.abs(offShown(unit, offBy(unit, check) - version.off));
  return unit === 'pct'
    ? message('act.meter-check.off.pct', { recordName, offPoints: off })
    : message('act.meter-check.off.ohm', { recordName, offSharePct: 100 * off });
}

/** How the history tells of an act: its records by the names that they had then. */
export function lineOf(
  { acts, meters }: Pick<YardReader, 'acts' | 'meters'>,
  { id, request, place }: ListedAct,
) {
  if (request === 'exchange.merge') {
    const merged = mergedActSchema.safeParse(acts.find(id)?.outcome).data;
    if (merged) return mergedLine(merged);
  }
  if (request === 'imports.save') {
    const imported = importedLine(acts.find(id)?.outcome);
    if (imported) return imported;
  }
  const named = (column: string, value: unknown): SavedValue => {
    const table = NAMED[column];
    if (table !== undefined && value != null) return acts.nameThen(table, value, place);
    return typeof value === 'string' || typeof value === 'number' ? value : null;
  };
  const valuesOf = (row: Record<string, unknown>): Record<string, SavedValue> =>
    Object.fromEntries(Object.entries(row).map(([column, value]) => [column, named(column, value)]));

  /** The row of the board, or of the piece in the oven, that was measured. */
  function measuredOn(row: Record<string, unknown>): Record<string, unknown> {
    const column = Object.keys(MEASURED).find((each) => row[each] != null);
    if (column === undefined) return row;
    return measuredOn(acts.measured(MEASURED[column] as string, row[column]) ?? {});
  }
  function nameOf(row: Record<string, unknown>): string | null {
    const owners = measuredOn(row);
    const own = row.shown_name ?? row.code ?? row.name ?? owners.piece;
    if (typeof own === 'string') return own;
    const column = OWNERS.find((each) => owners[each] != null);
    if (column !== undefined) return acts.nameThen(OWNER_TABLES[column] as string, owners[column], place);
    return owners.round_id == null ? null : nameOf(acts.measured('round', owners.round_id) ?? {});
  }
  function whereOf(inTable: string, row: Record<string, unknown>): string | null {
    // Of boards added to several stacks none is named.
    if (inTable === 'board' && acts.stacksOfAdded(place) > 1) return null;
    if (inTable === 'board') return acts.nameThen('stack', row.stack_id, place);
    if (inTable === 'board_origin') return acts.nameThen('board', row.parent_id, place);
    return PLACED.has(inTable) ? acts.nameThen('place', row.place_id, place) : null;
  }
  const recordOf = ({ inTable, how, row, before, of }: ActSample): ChangedRecord => ({
    name: nameOf(of),
    whereName: how !== 'edited' ? whereOf(inTable, row) : inTable === 'move' ? whereOf(inTable, of) : null,
    values: valuesOf(row),
    isDayOnly: of.dated_by === 'day',
    before: valuesOf(before),
  });

  const changes = acts
    .counts(place)
    .filter(({ inTable }) => inTable !== 'undone_row')
    .map((count): TableChange => ({ ...count, records: acts.samples(place, count).map(recordOf) }));
  const ofMeter = OF_METERS[request as CommandName];
  if (ofMeter) {
    const id = changes
      .flatMap(({ records }) => records.map(({ values }) => meterIn(values.value)))
      .find(Boolean);
    return message(ofMeter, { recordName: acts.nameThen('meter', id, place) ?? '…' });
  }
  const of = (inTable: string) => changes.find((change) => change.inTable === inTable);
  const profileOf = () => of('meter_profile')?.records[0]?.name ?? '…';
  if (request === 'meters.useFile' && changes.length > 0)
    return message('act.meter.file', { recordName: profileOf() });
  if (request === 'meter.describe') {
    const known = acts.nameThen('meter', acts.idOfOutcome(place, 'meterId'), place);
    return message('act.meter.set-up', { recordName: known ?? profileOf() });
  }
  // One that was added under that address, and undone, gives it up first.
  const recognized = of('meter')?.records.at(-1);
  if (request === 'meters.recognize' && recognized) {
    const recordName = recognized.name ?? '…';
    return 'device_id' in recognized.values
      ? message('act.meter.recognized', { recordName })
      : message('act.meter.recognized-name', { recordName });
  }
  if (request === 'meterChecks.add') {
    const [checked] = of('meter_check')?.records ?? [];
    const version = meters.version(Number(checked?.values.meter_profile_id));
    if (checked && version) return checkLine(checked, version);
  }
  const [excluded] = of('check_exclusion')?.records ?? [];
  if (excluded && request === 'meterChecks.include')
    return message('act.meter-check.included', { recordName: excluded.name ?? '…' });
  if (excluded && request === 'meterChecks.exclude')
    return message('act.meter-check.excluded', {
      recordName: excluded.name ?? '…',
      readings: of('amendment')?.rows ?? 0,
    });
  if (request === 'air.delete') {
    const [gone] = changes.find(({ inTable }) => inTable === 'air_exclusion')?.records ?? [];
    const measuredOn = acts.measured('air_log', gone?.values.log_id)?.at;
    if (gone && typeof measuredOn === 'string')
      return message('act.air.deleted', { placeName: gone.whereName ?? '…', measuredOn });
  }
  if (request === 'meterChecks.correct') {
    const recordName = of('check_correction')?.records[0]?.name ?? profileOf();
    return message('act.meter-check.corrected', { readings: of('amendment')?.rows ?? 0, recordName });
  }
  return actLine(changes, MERGING.has(request) ? acts.outcomeName(place) : null);
}

/** What was done in the yard, as a person reads it. */
export const listingQueries = (context: QueryContext) =>
  ({
    'acts.list': ({ before, limit, boardId }) => {
      const yard = context.yard();
      const page = yard.acts.page(before, limit, boardId);
      return {
        acts: page.map((act) => ({
          id: act.id,
          at: act.at,
          isUndone: act.isUndone,
          line: lineOf(yard, act),
        })),
        next: page.length < limit ? null : (page.at(-1)?.place ?? null),
      };
    },
  }) satisfies Partial<Queries>;
