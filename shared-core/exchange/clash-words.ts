import { exclusionSchema } from '../probing/readings/exclusion.ts';
import { dateMessage } from '../record-words/date-message.ts';
import type { Code } from '../words/en/index.ts';
import { type Message, message } from '../words/message.ts';
import type { YardRecord } from './yard-tables.ts';

/** A value as a person reads it; null where it is blank. */
export type ClashValue = Message | string | null;

type Show = (value: unknown, record: YardRecord) => ClashValue;

/** By the words of a form; as the file has it where it has another value. */
const asWord =
  (form: string, known: readonly string[]): Show =>
  (value) =>
    known.includes(String(value)) ? { code: `${form}.${value}` as Code } : asText(value, { uuid: '' });
const asText: Show = (value) =>
  value === null || value === undefined || value === ''
    ? null
    : typeof value === 'object'
      ? message('merge.value.details')
      : String(value);
const ifNumber =
  (show: (value: number, record: YardRecord) => Message): Show =>
  (value, record) =>
    typeof value === 'number' ? show(value, record) : asText(value, record);
const ifDate =
  (show: (value: string, record: YardRecord) => Message): Show =>
  (value, record) =>
    typeof value === 'string' && !Number.isNaN(Date.parse(value))
      ? show(value, record)
      : asText(value, record);

const asMm = ifNumber((valueMm) => message('act.value.mm', { valueMm }));
const asLength = ifNumber((valueLengthMm) => message('act.value.length', { valueLengthMm }));
const asTemp = ifNumber((valueTempC) => message('merge.value.temp', { valueTempC }));
const asGrams = ifNumber((valueGrams) => message('merge.value.grams', { valueGrams }));
const asDay = ifDate((valueOn) => message('act.value.day', { valueOn }));
const asDate = ifDate((instant, { datedBy }) => dateMessage(instant, datedBy === 'day'));
const asThickness = ifNumber((thicknessMm, { thicknessQuarters }) =>
  message('act.value.thickness', {
    thickness: { thicknessMm, quarters: typeof thicknessQuarters === 'number' ? thicknessQuarters : null },
  }),
);
const asYes: Show = (value) => message(value === true || value === 1 ? 'merge.value.yes' : 'merge.value.no');
const asLeaving: Show = (value) => {
  const { code, note } = (value ?? {}) as { code?: string; note?: string };
  if (code === undefined || !['sold', 'used', 'scrapped'].includes(code)) return asText(value, { uuid: '' });
  const why = message(`archived.${code as 'sold'}`);
  return note ? message('merge.value.left', { why, note }) : why;
};

/** The fields of an export that a person knows, whatever table they are of. */
const FIELDS: Readonly<Record<string, readonly [label: Code, show: Show]>> = {
  name: ['act.field.name', asText],
  code: ['board.id', asText],
  board: ['past-round.board', asText],
  stack: ['board.stack', asText],
  place: ['act.field.place', asText],
  project: ['reserve.project', asText],
  meter: ['past-round.meter', asText],
  meterProfile: ['past-round.meter', asText],
  speciesId: ['board.species', asText],
  endUseId: ['act.field.use', asText],
  thicknessMm: ['board.thickness', asThickness],
  widthMm: ['board.width', asMm],
  lengthMm: ['board.length', asLength],
  sawnOn: ['board.sawn-on', asDay],
  driedBy: ['board.dried-by', asWord('board.dried-by', ['air', 'kiln'])],
  sawing: ['board.sawing', asWord('board.sawing', ['flat', 'rift', 'quarter', 'unknown'])],
  ringRadiusMm: ['board.pith-distance', asMm],
  barkSide: [
    'board.bark-side',
    asWord('board.bark-side', ['up', 'down', 'up-bark-on', 'down-bark-on', 'unknown']),
  ],
  barkOffOn: ['board.bark-off-on', asDay],
  log: ['board.log', asText],
  layer: ['board.layer', asText],
  stackColumn: ['board.column', asText],
  note: ['board.note', asText],
  archivedAt: ['merge.field.left', asDay],
  archivedWhy: ['merge.field.why-left', asLeaving],
  closedAt: ['merge.field.closed', asDay],
  undoneAt: ['merge.field.undone', asDay],
  topCover: ['act.field.cover', asWord('stacks.top', ['covered', 'sun'])],
  kind: ['act.field.kind', asWord('places.kind', ['outdoors', 'open-shed', 'shop', 'heated-room'])],
  air: ['act.field.air', asText],
  airSource: ['merge.field.air-source', asText],
  airMovement: [
    'places.movement',
    asWord('places.movement', ['still-room', 'open-shed', 'wind', 'fan', 'dehumidified', 'solar-kiln']),
  ],
  since: ['act.field.moved-on', asDate],
  plannedOn: ['dates.move-day', asDay],
  neededBy: ['act.field.needed-by', asDay],
  startedAt: ['merge.field.date', asDate],
  finishedAt: ['merge.field.finished', asDate],
  takenAt: ['merge.field.date', asDate],
  datedBy: ['merge.field.dated-by', asWord('merge.dated-by', ['clock', 'time', 'day'])],
  airTempC: ['past-round.air-temp', asTemp],
  tempC: ['past-round.wood-temp', asTemp],
  woodTempC: ['past-round.wood-temp', asTemp],
  depthMm: ['merge.field.depth', asMm],
  raw: ['merge.field.value', ifNumber((rawValue) => message('merge.value.number', { rawValue }))],
  isAbove: ['csv.above-scale', (value, record) => asYes(value !== false, record)],
  grams: ['merge.field.weight', asGrams],
  inUse: ['merge.field.own-checks', asYes],
  caption: ['merge.field.caption', asText],
  excluded: [
    'merge.field.excluded',
    (value) => {
      const why = exclusionSchema.safeParse(value).data;
      if (why === undefined) return value === null ? message('merge.value.no') : asText(value, { uuid: '' });
      return 'text' in why ? why.text : message(`exclusion.${why.code}`);
    },
  ],
};

/**
 * What a field of a record is called, and its value, in words.
 *
 * @param value  a name in place of the UUID of another record
 */
export function clashField(
  field: string,
  value: unknown,
  record: YardRecord,
): { label: Message; shown: ClashValue } {
  // What an amendment corrects says what its value is.
  const named = field === 'value' && typeof record.field === 'string' ? record.field : field;
  const [label, show] = FIELDS[named] ?? (['merge.field.details', asText] as const);
  return { label: { code: label }, shown: show(value, record) };
}
