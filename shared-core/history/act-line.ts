import { isMoreThan } from '../probing/readings/beyond-scale.ts';
import { dateMessage } from '../record-words/date-message.ts';
import type { Code } from '../words/en/index.ts';
import { type Message, message } from '../words/message.ts';
import type { ChangedRecord, SavedValue, TableChange } from './act-facts.ts';
import { fieldsOf } from './edited-fields.ts';

/** The order of a line's sentences where one act changed several tables: first what the others follow from. */
const ORDER = [
  'board_origin',
  'project',
  'species',
  'end_use',
  'stack',
  'board',
  'place',
  'planned_move',
  'reservation',
  'meter',
  'meter_profile',
  'test_block',
  'meter_check',
  'check_exclusion',
  'check_correction',
  'round',
  'reading',
  'move',
  'amendment',
  'wood_temperature',
  'spot_plan',
  'confirmed_species',
  'oven_check',
  'oven_weight',
  'own_fit_choice',
  'sample_cut',
  'sample_section_dry',
  'sample_weight',
  'label_print',
  'air_sensor',
  'air_sensor_stay',
  'air_log',
  'air_exclusion',
  'picture',
  'setting',
];

type Changes = ReadonlyMap<string, TableChange>;

/** What a board has goes to what it becomes. */
function isCut(all: Changes): boolean {
  return all.has('board_origin:added');
}

/** What goes without saying beside another change of the same act: of a table, or of one kind of change. */
const SAID_BY: Readonly<Record<string, (changes: Changes) => boolean>> = {
  board: isCut,
  move: (all) => all.has('board:added') || isCut(all),
  planned_move: isCut,
  reservation: isCut,
  confirmed_species: isCut,
  picture: isCut,
  stack: (all) =>
    ['move:added', 'move:edited', 'move:deleted'].some((change) => all.has(change)) &&
    isOnlyPlaced(all.get('stack:edited')),
  meter_profile: (all) => all.has('meter:added'),
  'meter:edited': (all) =>
    all.has('meter_profile:added') &&
    all.get('meter:edited')?.records.every(({ values }) => !('name' in values)) === true,
  air_sensor_stay: (all) =>
    all.has('air_sensor:added') || all.get('air_sensor:edited')?.records[0]?.values.closed_at === null,
  'air_exclusion:added': (all) => all.has('air_log:added'),
  'air_sensor_stay:edited': (all) => all.has('air_sensor_stay:added'),
  wood_temperature: (all) => all.has('round:added') || all.has('reading:added'),
  spot_plan: (all) => all.has('reading:added') || all.has('amendment:added'),
  amendment: (all) => (all.has('reading:added') && !isReadingMoved(all)) || all.has('round:edited'),
  reading: isReadingMoved,
  'picture:edited': isReadingMoved,
  'round:edited': (all) => all.has('round:added'),
  setting: (all) => all.size > 1,
};

/** A stack goes where its boards are moved. */
const isOnlyPlaced = (change: TableChange | undefined): boolean =>
  change?.records.every(({ values }) =>
    Object.keys(values).every((column) => column === 'place_id' || column === 'version'),
  ) === true;

const isOf =
  (field: string) =>
  ({ values }: ChangedRecord): boolean =>
    values.field === field;

/** Readings are of another board now. */
function isReadingMoved(all: Changes): boolean {
  return all.get('amendment:added')?.records.some(isOf('movedFrom')) === true;
}

type Told = Message | null;
const nameOf = ({ records }: TableChange): string => records[0]?.name ?? '…';

/** A change of one table, as sentences; none where it goes without saying. */
function told(change: TableChange, all: Changes): Told[] {
  const { inTable, how, rows, records } = change;
  const recordName = nameOf(change);
  const [first] = records;
  const some = { rows, recordName };
  switch (`${inTable}:${how}`) {
    case 'board:added': {
      const stackName = first?.whereName;
      return [
        stackName == null
          ? message('act.board.added', some)
          : message('act.board.added-to', { ...some, stackName }),
      ];
    }
    case 'board:edited':
      return boardEdited(change);
    case 'board_origin:added':
      return [became(change)];
    case 'board:deleted':
      return [message('act.board.deleted', some)];
    case 'stack:added':
      return [message('act.stack.added', some)];
    case 'stack:deleted':
      return [message('act.stack.deleted', some)];
    case 'place:added':
      return [message('act.place.added', some)];
    case 'place:deleted':
      return [message('act.place.deleted', some)];
    case 'species:added':
      return [message('act.species.added', some)];
    case 'species:deleted':
      return [message('act.species.deleted', some)];
    case 'end_use:added':
      return [message('act.use.added', some)];
    case 'project:added':
      return [message('act.project.added', some)];
    case 'project:deleted':
      return [message('act.project.deleted', some)];
    case 'meter:added':
      return [message('act.meter.added', some)];
    case 'meter_profile:added':
      return [message('act.meter.profile', some)];
    case 'test_block:added':
      return [message('act.test-block.added', some)];
    case 'meter_check:added':
      return [message('act.meter-check.added', some)];
    case 'check_exclusion:added':
      return [
        first?.values.excluded === 'null'
          ? message('act.meter-check.included', { recordName })
          : message('act.meter-check.excluded', { recordName, readings: 0 }),
      ];
    case 'move:added':
      return [message('act.moved', { ...some, placeName: first?.whereName ?? '…' })];
    case 'move:edited':
      return moveEdited(change);
    case 'move:deleted':
      return [message('act.move.deleted', { ...some, placeName: first?.whereName ?? '…' })];
    case 'planned_move:added':
      return [message('act.planned-move.added', { ...some, placeName: first?.whereName ?? '…' })];
    case 'planned_move:deleted':
      return [message('act.planned-move.deleted', some)];
    case 'reservation:added':
      return [message('act.reservation.added', some)];
    case 'reservation:edited':
      return [message('act.reservation.edited', some)];
    case 'reservation:deleted':
      return [message('act.reservation.deleted', some)];
    case 'picture:added':
      return [message('act.picture.added', some)];
    case 'picture:edited':
      return [message('act.picture.edited', some)];
    case 'picture:deleted':
      return [message('act.picture.deleted', some)];
    case 'round:added':
      return [roundAdded(change, all.has('round:edited'))];
    case 'round:edited':
      return first ? roundEdited(change, first) : [];
    case 'reading:added':
      return [readingAdded(change, all.get('amendment:added'))];
    case 'amendment:added':
      return isReadingMoved(all) ? [readingsMoved(change, all.get('reading:added'))] : amended(change);
    case 'wood_temperature:added':
      return [temperature(first)];
    case 'spot_plan:added':
      return [message('act.spot-plan')];
    case 'confirmed_species:added':
    case 'confirmed_species:edited':
      return [message('act.species-confirmed', some)];
    case 'oven_check:added':
      return [message('act.oven-check.added', some)];
    case 'oven_weight:added':
      return [message('act.oven-check.weighed', some)];
    case 'own_fit_choice:added':
      return [ownFit(first)];
    case 'sample_cut:added':
      return [message('act.sample.cut', some)];
    case 'sample_section_dry:added':
      return [message('act.sample.dried', some)];
    case 'sample_weight:added':
      return [message('act.sample.weighed', some)];
    case 'label_print:added':
      return [message('act.labels-printed', some)];
    case 'air_sensor:added':
      return [message('act.sensor.added', some)];
    case 'air_sensor:edited':
      return sensorEdited(change, some);
    case 'air_sensor_stay:added':
    case 'air_sensor_stay:edited':
      return [sensorMoved(change)];
    case 'air_log:added':
      return [airMeasured(change, all.has('air_exclusion:added'))];
    case 'air_exclusion:added':
      return [airExcluded('act.air.excluded', change)];
    case 'air_exclusion:deleted':
      return [airExcluded('act.air.included', change)];
    case 'setting:added':
    case 'setting:edited':
      return [message('act.settings')];
    default:
      return how === 'edited' ? edited(change) : [];
  }
}

function became(change: TableChange): Told {
  const [first] = change.records;
  const some = { rows: change.rows, recordName: nameOf(change), parentName: first?.whereName ?? '…' };
  switch (first?.values.how) {
    case 'ripped':
      return message('act.board.ripped', some);
    case 'crosscut':
      return message('act.board.crosscut', some);
    default:
      return message('act.board.merged', some);
  }
}

/** What follows from putting a board in another stack: its layer and column are others, and its version is. */
const PUT = new Set(['stack_id', 'layer', 'stack_column', 'version']);

/** That boards were put in a stack, and what else was changed of them. */
function boardEdited(change: TableChange): Told[] {
  const { rows, records } = change;
  const stackName = records[0]?.values.stack_id;
  if (typeof stackName !== 'string' || records.some(({ values }) => values.stack_id !== stackName))
    return edited(change);
  const others = records.map((record) => ({
    ...record,
    values: Object.fromEntries(Object.entries(record.values).filter(([column]) => !PUT.has(column))),
  }));
  const isMore = others.some(({ values }) => Object.keys(values).length > 0);
  return [
    message('act.board.put', { rows, recordName: nameOf(change), stackName }),
    ...(isMore ? edited({ ...change, records: others }) : []),
  ];
}

/** That boards were somewhere since another day, or only that moves were changed. */
function moveEdited(change: TableChange): Told[] {
  const { rows, records } = change;
  const [first] = records;
  const since = first?.values.since;
  const isSame =
    typeof since === 'string' &&
    records.every(
      ({ values, whereName }) =>
        values.since === since && !('place_id' in values) && whereName === first?.whereName,
    );
  if (!isSame) return edited(change);
  const some = { rows, recordName: nameOf(change) };
  return [message('act.move.since', { ...some, placeName: first?.whereName ?? '…', sinceOn: since })];
}

/** @param isFinished  it was entered whole, as from a notebook or a table */
function roundAdded({ rows, records }: TableChange, isFinished: boolean): Told {
  const [first] = records;
  const startedAt = first?.values.started_at;
  const some = { rows, recordName: first?.name ?? '…' };
  if (first === undefined || typeof startedAt !== 'string') return message('act.round.started', some);
  const date = dateMessage(startedAt, first.isDayOnly);
  if (isFinished) return message('act.round.entered', { ...some, date });
  return first.values.dated_by === 'clock'
    ? message('act.round.started', some)
    : message('act.round.started-on', { ...some, date });
}

function roundEdited(change: TableChange, { values, before, name, isDayOnly }: ChangedRecord): Told[] {
  const recordName = name ?? '…';
  if (typeof values.started_at === 'string' && typeof before.started_at === 'string') {
    const beforeDate = dateMessage(before.started_at, isDayOnly);
    const afterDate = dateMessage(values.started_at, isDayOnly);
    return [message('act.round.dated', { recordName, beforeDate, afterDate })];
  }
  if ('finished_at' in values) {
    return [
      values.finished_at === null
        ? message('act.round.reopened', { recordName })
        : message('act.round.finished', { recordName }),
    ];
  }
  return edited(change);
}

function sensorEdited(change: TableChange, some: { rows: number; recordName: string }): Told[] {
  const { values = {} } = change.records[0] ?? {};
  if (!('closed_at' in values)) return edited(change);
  // One that was removed and added again is the same record.
  return [message(values.closed_at === null ? 'act.sensor.added' : 'act.sensor.removed', some)];
}

function sensorMoved(change: TableChange): Told {
  const [first] = change.records;
  const recordName = nameOf(change);
  const placeName = first?.whereName ?? first?.values.place_id;
  return typeof placeName === 'string'
    ? message('act.sensor.moved', { recordName, placeName })
    : message('act.sensor.nowhere', { recordName });
}

/** @param isInstead  of another value */
function airMeasured({ rows, records }: TableChange, isInstead: boolean): Told {
  const [first] = records;
  const placeName = first?.whereName ?? '…';
  const { at, temp_c: tempC, rh } = first?.values ?? {};
  if (rows > 1 || typeof at !== 'string' || typeof tempC !== 'number' || typeof rh !== 'number')
    return message('act.air.measured-often', { rows, placeName });
  return message(isInstead ? 'act.air.edited' : 'act.air.measured', {
    placeName,
    measuredOn: at,
    airTempC: tempC,
    humidityRhPct: 100 * rh,
  });
}

function airExcluded(code: 'act.air.excluded' | 'act.air.included', { rows, records }: TableChange): Told {
  const [first] = records;
  return message(code, {
    rows,
    placeName: first?.whereName ?? '…',
    measuredOn: String(first?.values.day),
  });
}

/** A choice of a person whether readings of a species are corrected by their own checks. */
function ownFit(record: ChangedRecord | undefined): Told {
  const speciesName = String(record?.values.species_id ?? '…');
  return record?.values.in_use === 1
    ? message('act.own-fit-on', { speciesName })
    : message('act.own-fit-off', { speciesName });
}

/** @param amended  what was saved beside it: whether the meter showed only that it is above the value */
function readingAdded(change: TableChange, amended: TableChange | undefined): Told {
  const { raw, unit } = change.records[0]?.values ?? {};
  const some = { rows: change.rows, recordName: nameOf(change) };
  if (typeof raw !== 'number' || change.rows > 1) return message('act.readings.added', some);
  const value = shownValue(raw, unit);
  const reading = amended?.records.some(isOf('isAbove'))
    ? message('act.value.above', { reading: value })
    : value;
  return message('act.reading.added', { recordName: some.recordName, reading });
}

function shownValue(raw: number, unit: SavedValue | undefined): Message {
  return unit === 'ohm'
    ? message('act.value.ohm', { rawOhm: raw })
    : message('act.value.pct', { rawPct: raw });
}

/** @param added  the readings on the boards that they were moved to */
function readingsMoved({ records }: TableChange, added: TableChange | undefined): Told {
  // Where readings are moved, nothing else is excluded.
  const from = records.filter(isOf('excluded'));
  const [first] = from;
  const recordName = first?.name ?? '…';
  const other = from.find(({ name }) => name !== recordName);
  if (other) return message('act.readings.swapped', { recordName, otherName: other.name ?? '…' });
  const { value, unit } = first?.before ?? {};
  const reading = shownValue(Number(value), unit);
  const toName = added?.records[0]?.name ?? '…';
  return message('act.reading.moved', { rows: added?.rows ?? from.length, recordName, toName, reading });
}

/** What a person corrected, by the field: each with how many. */
function amended({ rows, records }: TableChange): Told[] {
  const fields = new Set(records.map(({ values }) => values.field));
  return [...fields].flatMap((field) => {
    const of = records.filter(({ values }) => values.field === field);
    const change = { rows: fields.size === 1 ? rows : of.length, records: of };
    if (field === 'raw') return valueAmended(change, records.find(isOf('isAbove')));
    // Said with the value.
    if (field === 'isAbove') return fields.has('raw') ? [] : valueAmended(change, of[0]);
    return amendedField(change);
  });
}

/** @param mark  the new amendment about `>`; undefined if that did not change */
function valueAmended(
  { rows, records }: Pick<TableChange, 'rows' | 'records'>,
  mark: ChangedRecord | undefined,
): Told[] {
  const first = records[0];
  if (first === undefined) return [];
  const { unit, isAbove, saved } = first.before;
  const raw = Number(first.before.value);
  const after = first.values.field === 'raw' ? Number(first.values.value) : raw;
  const shownWith = (value: number, given: SavedValue | undefined): Message => {
    const isMore = isMoreThan(value, Number(saved), JSON.parse(String(given ?? false)) as boolean | number);
    return isMore
      ? message('act.value.above', { reading: shownValue(value, unit) })
      : shownValue(value, unit);
  };
  const some = { rows, recordName: first.name ?? '…' };
  const facts = { before: shownWith(raw, isAbove), after: shownWith(after, mark?.values.value ?? isAbove) };
  return [message('act.reading.value', { ...some, ...facts })];
}

function amendedField({ rows, records }: Pick<TableChange, 'rows' | 'records'>): Told[] {
  const first = records[0];
  if (first === undefined) return [];
  const some = { rows, recordName: first.name ?? '…' };
  if (first.values.reading_id == null) {
    return [message(first.values.value === 'null' ? 'act.weight.included' : 'act.weight.excluded', some)];
  }
  switch (first.values.field) {
    case 'excluded':
      return [message(first.values.value === 'null' ? 'act.reading.included' : 'act.reading.excluded', some)];
    case 'depthMm':
      return [message('act.reading.depth', some)];
    case 'meterProfileId':
      return [message('act.reading.meter', some)];
    case 'woodTempC': {
      const valueTempC = JSON.parse(String(first.values.value)) as number | null;
      return [
        valueTempC === null
          ? message('act.reading.temperature-unknown', some)
          : message('act.reading.temperature', { ...some, valueTempC }),
      ];
    }
    // The plan of its board is another, and the reading stays where it was taken.
    case 'spotIndex':
      return [];
    default:
      return [message('act.reading.corrected', some)];
  }
}

function temperature(record: ChangedRecord | undefined): Told {
  const tempC = record?.values.temp_c;
  return typeof tempC === 'number'
    ? message('act.temperature', { valueTempC: tempC })
    : message('act.temperature-unknown');
}

const WHAT: Readonly<Record<string, Extract<Code, `act.what.${string}`>>> = {
  board: 'act.what.board',
  stack: 'act.what.stack',
  place: 'act.what.place',
  move: 'act.what.move',
  species: 'act.what.species',
  end_use: 'act.what.use',
  meter: 'act.what.meter',
  planned_move: 'act.what.planned-move',
  round: 'act.what.round',
  project: 'act.what.project',
  test_block: 'act.what.test-block',
  air_sensor: 'act.what.sensor',
};

/** For so many fields of an edit, the line says what they became. */
const MOST_FIELDS = 2;

function edited(change: TableChange): Told[] {
  const { inTable, rows, records } = change;
  const whatCode = WHAT[inTable];
  if (whatCode === undefined) return [];
  const some = { rows, recordName: nameOf(change) };
  const what = message(whatCode, some);
  const ended = endedOrBack(change, what);
  if (ended) return [ended];
  const fields = fieldsOf(inTable, records);
  if (fields.length === 0) return [message('act.edited', { what })];
  if (fields.length > MOST_FIELDS) {
    return [message('act.fields-edited', { fields: fields.map(({ label }) => label), what })];
  }
  return fields.map(({ label: field, before, after }) => {
    if (before != null && after != null) return message('act.field-edited', { field, before, after, what });
    if (after != null) return message('act.field-set', { field, after, what });
    return message('act.fields-edited', { fields: [field], what });
  });
}

/** A record that left the lists, or came back. */
function endedOrBack({ inTable, records }: TableChange, what: Message): Told {
  const values = records[0]?.values ?? {};
  const at: SavedValue | undefined = inTable === 'board' ? values.archived_at : values.closed_at;
  if (at === undefined) return null;
  const why =
    inTable === 'board' &&
    at !== null &&
    /"code":"(sold|used|scrapped|deleted)"/.exec(String(values.archived_why))?.[1];
  if (why) return message('act.left', { why, what });
  if (inTable === 'meter') {
    return message(at === null ? 'act.meter.back' : 'act.meter.removed', {
      recordName: records[0]?.name ?? '…',
    });
  }
  if (inTable === 'test_block') {
    return message(at === null ? 'act.test-block.back' : 'act.test-block.removed', {
      recordName: records[0]?.name ?? '…',
    });
  }
  if (inTable === 'stack' || inTable === 'place') {
    return at === null ? message('act.reopened', { what }) : message('act.closed', { what });
  }
  return at === null ? message('act.back', { what }) : message('act.ended', { what });
}

/** The main thing that an act did, where there is no room for all of it. */
export function firstSentence(line: Message): Message {
  const all = line.code === 'act.all' ? line.facts?.allSentences : undefined;
  return Array.isArray(all) ? (all[0] as Message) : line;
}

/** A stack or a place whose all became another's, and that boards were carried there. */
function merged(all: Changes, intoName: string): Told[] {
  const closed = (inTable: string) =>
    all.get(`${inTable}:edited`)?.records.find(({ values }) => typeof values.closed_at === 'string');
  const carried = all.get('move:added');
  const rows = all.get('board:edited')?.rows ?? 0;
  const [stack, place] = [closed('stack'), closed('place')];
  if (stack) {
    const facts = { recordName: stack.name ?? '…', intoName, rows };
    return [message('act.stack.merged', facts), ...(carried ? told(carried, all) : [])];
  }
  const facts = { recordName: place?.name ?? '…', intoName };
  const isItsAir = all.get('place:edited')?.records.some((record) => record !== place);
  return [message(isItsAir ? 'act.place.merged-with-air' : 'act.place.merged', facts)];
}

/**
 * What an act did, as a list of acts tells it.
 *
 * @param intoName  of the stack or place which it merged another into; null where it did not
 */
export function actLine(changes: readonly TableChange[], intoName: string | null = null): Message {
  const all = new Map(changes.map((change) => [`${change.inTable}:${change.how}`, change]));
  const sentences = intoName === null ? changed(all) : merged(all, intoName);
  const [only, ...others] = sentences.filter((sentence) => sentence !== null);
  if (only === undefined) return message('act.other');
  return others.length === 0 ? only : message('act.all', { allSentences: [only, ...others] });
}

function changed(all: Changes): Told[] {
  // Since when a board is there follows from a reading that is moved to it.
  const isFirst = (inTable: string) => inTable === 'amendment' && isReadingMoved(all);
  const order = ({ inTable }: TableChange) => (isFirst(inTable) ? -1 : ORDER.indexOf(inTable));
  return [...all.values()]
    .toSorted((a, b) => order(a) - order(b))
    .filter(({ inTable, how }) => ![inTable, `${inTable}:${how}`].some((key) => SAID_BY[key]?.(all)))
    .flatMap((change) => told(change, all));
}
