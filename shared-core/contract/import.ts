import { z } from 'zod';
import { dayOrderSchema as orderOfDaySchema } from '../probing/readings/order-of-day.ts';
import { depthSchema } from '../probing/readings/reading.ts';
import {
  boardSchema,
  daySchema,
  MOST_NOTE_LETTERS,
  nameSchema,
  newPlaceSchema,
  rowIdSchema,
} from './yard.ts';

/** What a table is about: boards with or without readings, the air of places, or oven-dry checks. */
export const importKindSchema = z.enum(['boards', 'air', 'oven']);
export type ImportKind = z.infer<typeof importKindSchema>;

/** The roles that a column of each kind of table can have. `unused` goes nowhere. */
export const rolesOf = {
  boards: [
    'unused',
    'code',
    'species',
    'thickness',
    'width',
    'length',
    'sawn-on',
    'log',
    'layer',
    'stack',
    'place',
    'note',
    'day',
    'time',
    'reading',
    'reading-unit',
    'depth',
    'wood-temp',
    'excluded',
  ],
  air: ['unused', 'place', 'month', 'day', 'time', 'air-temp', 'humidity'],
  oven: ['unused', 'piece', 'species', 'day', 'reading', 'wood-temp', 'wet-weight', 'dry-weight', 'note'],
} as const satisfies Record<ImportKind, readonly string[]>;

/** What a column holds. */
export type ColumnRole = (typeof rolesOf)[ImportKind][number];
export const columnRoleSchema = z.enum([...new Set(Object.values(rolesOf).flat())] as [
  ColumnRole,
  ...ColumnRole[],
]);

/** Whether a column of such a table can have the role. */
export const canHave = (kind: ImportKind, role: ColumnRole): boolean =>
  rolesOf[kind].some((each) => each === role);

/** Roles that several columns can have. Of a board's ID each has a part: "Log 3" and "2" are LOG-3-2. */
export const repeatedRoles: readonly ColumnRole[] = ['unused', 'code', 'reading', 'note', 'dry-weight'];
/** Roles that a table of boards can have once for each of its columns of readings. */
export const rolesOfReadings: readonly ColumnRole[] = ['day', 'time', 'depth', 'wood-temp', 'reading-unit'];

/** The unit of a column's bare numbers; a unit in a cell goes before it. `share`: 0.12 is 12%. */
export const columnUnitSchema = z.enum([
  'mm',
  'cm',
  'm',
  'in',
  'ft',
  'quarters',
  'pct',
  'share',
  'ohm',
  'kohm',
  'megohm',
  'gigohm',
  'c',
  'f',
  'g',
  'kg',
  'oz',
  'lb',
]);
export type ColumnUnit = z.infer<typeof columnUnitSchema>;

/** Units of what a meter showed that are no moisture contents. */
export const ohmUnits = ['megohm', 'gigohm', 'kohm', 'ohm'] as const;
export const isOhmUnit = (unit: ColumnUnit | null): unit is (typeof ohmUnits)[number] =>
  ohmUnits.some((each) => each === unit);

const lengthUnits = ['mm', 'cm', 'm', 'in', 'ft'] as const;
/** The units that a role's numbers can be in; none of roles that are left out. */
export const unitsOf: Partial<Record<ColumnRole, readonly ColumnUnit[]>> = {
  thickness: ['mm', 'cm', 'in', 'quarters'],
  width: lengthUnits,
  length: lengthUnits,
  depth: ['mm', 'cm', 'in'],
  reading: ['pct', 'share', ...ohmUnits],
  humidity: ['pct', 'share'],
  'wood-temp': ['c', 'f'],
  'air-temp': ['c', 'f'],
  'wet-weight': ['g', 'kg', 'oz', 'lb'],
  'dry-weight': ['g', 'kg', 'oz', 'lb'],
};

/** In which order a date has year, month and day; `serial`: days since the end of 1899, as spreadsheets count them. */
export const dayOrderSchema = z.enum(['ymd', 'mdy', 'dmy', 'serial']);
export type DayOrder = z.infer<typeof dayOrderSchema>;
export const dayRoles: readonly ColumnRole[] = ['day', 'sawn-on'];
/** Whether the heading of a column may have the date of all its cells. */
export const isDatedRole = (role: ColumnRole): boolean => role === 'reading' || role === 'wood-temp';

export const columnChoiceSchema = z.object({
  role: columnRoleSchema,
  /** Null where the role has none. */
  unit: columnUnitSchema.nullable(),
  /** Null where the role is no date, or where the person has to choose. */
  order: dayOrderSchema.nullable(),
  /** What all readings of the column tell; null where that is not known or in its own column. */
  depth: depthSchema.nullable(),
  /** The local day of all readings of the column, or of the readings that its temperatures are of; null where each row has its own. */
  on: daySchema.nullable(),
  /** A blank cell means the same as the one above. */
  fillDown: z.boolean(),
});
export type ColumnChoice = z.infer<typeof columnChoiceSchema>;

/** As long as a cell is read: beyond what any text may have, so that a longer one is seen to be too long. */
export const MOST_CELL_LETTERS = MOST_NOTE_LETTERS + 100;
const cellSchema = z.string().max(MOST_CELL_LETTERS);

const placeOfYardSchema = z.object({ placeId: rowIdSchema });
/** Where a name of the table's belongs: a place of the yard, or a new one with that air. */
const placeMeantSchema = z.union([placeOfYardSchema, z.object({ add: newPlaceSchema.omit({ name: true }) })]);
export type PlaceMeant = z.infer<typeof placeMeantSchema>;

/** Names of the table are compared without the case of their letters. */
export const nameKey = (text: string): string => text.trim().toLowerCase().replaceAll(/\s+/g, ' ');

/** What a person answered for a name; a name such as "constructor" has no answer by itself. */
export const answerFor = <T>(answers: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.hasOwn(answers, nameKey(name)) ? answers[nameKey(name)] : undefined;

/** So many names of one kind can be answered for. */
const MOST_NAMES = 5000;
/** An answer for each name of a table. */
const byName = <T extends z.ZodType>(answer: T) =>
  z
    .record(z.string().max(MOST_CELL_LETTERS), answer)
    .refine((answers) => Object.keys(answers).length <= MOST_NAMES)
    .meta({ maxProperties: MOST_NAMES });

/** What a person chose of how a table is read. Rows and columns are counted from 0, the header included. */
export const importChoicesSchema = z.object({
  kind: importKindSchema,
  /** Null where the table has none. */
  headerRow: z.number().int().min(0).nullable(),
  decimalMark: z.enum(['.', ',']),
  columns: z.array(columnChoiceSchema).max(500),
  /** The ID of the board that all rows are of, where the table has no column of IDs; as it is typed. */
  boardCode: z.string().max(80).default(''),
  /** The stack of boards that have none in the table. */
  stackName: nameSchema.nullable(),
  /** Of new stacks that have no place in the table. */
  place: z.union([placeOfYardSchema, z.object({ add: newPlaceSchema })]).nullable(),
  endUseId: z.string().max(60),
  /** Of boards that have none in the table. */
  speciesId: z.string().max(60).nullable(),
  thicknessMm: boardSchema.shape.thicknessMm.nullable(),
  thicknessQuarters: boardSchema.shape.thicknessQuarters,
  /** What names mean that the yard does not know, by `nameKey`. */
  speciesOfNames: byName(z.string().max(60)),
  placesOfNames: byName(placeMeantSchema),
  /** Whether boards of the table are those of the yard, though it gives them another species or thickness. */
  areInYard: z.boolean().default(false),
  /** The meter that all readings are of; null where nobody knows. */
  meterId: rowIdSchema.nullable(),
  /** Which came first where boards were moved on a day of their readings; null while unknown. */
  order: orderOfDaySchema.nullable(),
  /** Cells that a person corrected. */
  fixes: z
    .array(z.object({ row: z.number().int().min(0), column: z.number().int().min(0), text: cellSchema }))
    .max(5000),
  leftOut: z.array(z.number().int().min(0)).max(100_000),
});
export type ImportChoices = z.infer<typeof importChoicesSchema>;

/** What a person has chosen of a table before they chose anything, besides what was guessed of it. */
export const nothingChosen = {
  boardCode: '',
  place: null,
  endUseId: 'furniture',
  speciesId: null,
  thicknessMm: null,
  thicknessQuarters: null,
  speciesOfNames: {},
  placesOfNames: {},
  areInYard: false,
  meterId: null,
  order: null,
  fixes: [],
  leftOut: [],
} satisfies Partial<ImportChoices>;
