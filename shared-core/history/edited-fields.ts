import type { Code } from '../words/en/index.ts';
import { type Message, message } from '../words/message.ts';
import type { ChangedRecord, SavedValue } from './act-facts.ts';

/** A field that an act edited: what it became, and what it was where that was the same for all; null where not told. */
export interface EditedField {
  label: Message;
  before: Message | string | null;
  after: Message | string | null;
}

type Show = (value: SavedValue, values: Readonly<Record<string, SavedValue>>) => Message | string | null;

const asText: Show = (value) => (value === null || value === '' ? null : String(value));
const asMm: Show = (value) =>
  typeof value === 'number' ? message('act.value.mm', { valueMm: value }) : null;
const asLength: Show = (value) =>
  typeof value === 'number' ? message('act.value.length', { valueLengthMm: value }) : null;
const asDay: Show = (value) =>
  typeof value === 'string' ? message('act.value.day', { valueOn: value }) : null;
const asThickness: Show = (value, { thickness_quarters: quarters }) =>
  typeof value === 'number'
    ? message('act.value.thickness', {
        thickness: { thicknessMm: value, quarters: typeof quarters === 'number' ? quarters : null },
      })
    : null;
/** A choice, by the words of its form. */
const asWord =
  (form: string): Show =>
  (value) =>
    typeof value === 'string' ? { code: `${form}.${value}` as Code } : null;
/** Too long: the line says only that it changed. */
const untold: Show = () => null;

/** The fields of each table that a person knows, in the order in which forms have them. */
const FIELDS: Readonly<Record<string, readonly [column: string, label: Code, show: Show][]>> = {
  board: [
    ['code', 'board.id', asText],
    ['stack_id', 'board.stack', asText],
    ['species_id', 'board.species', asText],
    ['thickness_mm', 'board.thickness', asThickness],
    ['width_mm', 'board.width', asMm],
    ['length_mm', 'board.length', asLength],
    ['sawn_on', 'board.sawn-on', asDay],
    ['dried_by', 'board.dried-by', asWord('board.dried-by')],
    ['sawing', 'board.sawing', asWord('board.sawing')],
    ['ring_radius_mm', 'board.pith-distance', asMm],
    ['bark_side', 'board.bark-side', asWord('board.bark-side')],
    ['bark_off_on', 'board.bark-off-on', asDay],
    ['log', 'board.log', asText],
    ['layer', 'board.layer', asText],
    ['stack_column', 'board.column', asText],
    ['note', 'board.note', untold],
  ],
  stack: [
    ['name', 'act.field.name', asText],
    ['place_id', 'act.field.place', asText],
    ['end_use_id', 'act.field.use', asText],
    ['top_cover', 'act.field.cover', asWord('stacks.top')],
    ['note', 'board.note', untold],
  ],
  place: [
    ['name', 'act.field.name', asText],
    ['kind', 'act.field.kind', asWord('places.kind')],
    ['air', 'act.field.air', untold],
    ['air_movement', 'places.movement', asWord('places.movement')],
    ['note', 'board.note', untold],
  ],
  move: [
    ['place_id', 'act.field.place', asText],
    ['since', 'act.field.moved-on', asDay],
  ],
  species: [['name', 'act.field.name', asText]],
  end_use: [['name', 'act.field.name', asText]],
  air_sensor: [['name', 'act.field.name', asText]],
  meter: [['name', 'act.field.name', asText]],
  test_block: [
    ['name', 'act.field.name', asText],
    ['expected', 'test-block.value', untold],
    ['tolerance', 'act.field.tolerance', untold],
    ['check_every', 'test-block.every', asWord('test-block.every')],
  ],
  planned_move: [
    ['place_id', 'act.field.place', asText],
    ['planned_on', 'dates.move-day', asDay],
    ['note', 'board.note', untold],
  ],
  round: [['note', 'board.note', untold]],
  project: [
    ['name', 'act.field.name', asText],
    ['needed_by', 'act.field.needed-by', asDay],
    ['note', 'board.note', untold],
  ],
};

/** What an act edited of records of a table. */
export function fieldsOf(inTable: string, records: readonly ChangedRecord[]): EditedField[] {
  return (FIELDS[inTable] ?? []).flatMap(([column, label, show]) => {
    const changed = records.filter(({ values }) => column in values);
    const [first] = changed;
    if (first === undefined) return [];
    const same = (side: 'values' | 'before') =>
      changed.every((each) => each[side][column] === first[side][column]);
    return [
      {
        label: message(label as 'board.id'),
        before: same('before') ? show(first.before[column] ?? null, first.before) : null,
        after: same('values') ? show(first.values[column] ?? null, first.values) : null,
      },
    ];
  });
}
