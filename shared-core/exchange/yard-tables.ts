/**
 * Everything that a person entered, as records of a yard's tables: what an export of everything holds, what comes in from
 * one, and what two yards are merged by. A record names another by its UUID, a species or use by its id. Species and uses
 * that came with the program, and were not edited, are not among them.
 */
import { z } from 'zod';
import { sensorKindSchema } from '../contract/air.ts';
import { checkEverySchema } from '../contract/meter-checks.ts';
import { contentHashSchema } from '../contract/pictures.ts';
import { boardSchema, placeSchema, stackSchema } from '../contract/yard.ts';
import { mediaTypeSchema } from '../pictures/picture.ts';
import { spotSchema, takenHowSchema } from '../probing/readings/reading.ts';
import { instantSchema } from '../time.ts';
import { readingUnitSchema } from '../wood/moisture/corrected.ts';
import { constantMassRules } from '../wood/moisture/oven-dry.ts';
import { PICTURE_FILES, picturePartSchema } from './picture-parts.ts';

/** How a column holds a field. */
type Kind =
  | 'plain'
  /** 0 or 1. */
  | 'flag'
  /** JSON text. */
  | 'json'
  /** The row id of a record of that table, whose UUID the field has. */
  | { of: string };

export interface Field {
  schema: z.ZodType;
  kind: Kind;
}

const plain = (schema: z.ZodType): Field => ({ schema, kind: 'plain' });
const flag = (schema: z.ZodType = z.boolean()): Field => ({ schema, kind: 'flag' });
const json = (schema: z.ZodType): Field => ({ schema, kind: 'json' });
const uuidOf = (table: string): Field => ({ schema: z.uuid(), kind: { of: table } });
const uuidOrNull = (table: string): Field => ({ schema: z.uuid().nullable(), kind: { of: table } });

/** Left out of earlier exports. */
const uuidOrAbsent = (table: string): Field => ({
  schema: z.uuid().nullable().default(null),
  kind: { of: table },
});

const name = plain(z.string().min(1).max(80));
const text = plain(z.string());
const number = plain(z.number());
const numberOrNull = plain(z.number().nullable());
const idOfCatalog = plain(z.string().min(1).max(60));
const instant = plain(instantSchema);
const instantOrNull = plain(instantSchema.nullable());
const dayOrNull = plain(z.iso.date().nullable());
/** What is read with care, as a file may hold it in an earlier form. */
const anyJson = json(z.json());
/** Of species and uses: of an earlier form, or one that the disk damaged, what can be read is. */
const entry = json(z.record(z.string(), z.json()));
const unit = plain(readingUnitSchema);
const datedBy = plain(z.enum(['clock', 'time', 'day']));

/** Settings that a person chose; all others are about the file they are in. */
export const settingsOfPerson = ['settings', 'typing-meter', 'deleted-meters'] as const;

/** How the records of a table come to be, which says how two yards go together. */
type Way =
  /** A person edits and deletes them. */
  | 'edited'
  /** They are only ever added. */
  | 'added'
  /** The same, and of those that agree in these fields the newest holds. */
  | readonly [string, ...string[]];

export interface YardTable {
  /** In the file of a yard. */
  table: string;
  way: Way;
  fields: Readonly<Record<string, Field>>;
}

/** In an order in which each names only records of those before it. The columns of a field: in snake case, `…_id` of a UUID. */
export const yardTables = {
  species: {
    table: 'species',
    way: 'edited',
    fields: {
      id: idOfCatalog,
      name: plain(z.string().nullable()),
      record: entry,
      builtIn: flag(z.literal(false)),
      undoneAt: instantOrNull,
    },
  },
  endUses: {
    table: 'end_use',
    way: 'edited',
    fields: {
      id: idOfCatalog,
      name: plain(z.string().nullable()),
      record: entry,
      builtIn: flag(z.literal(false)),
      undoneAt: instantOrNull,
    },
  },
  places: {
    table: 'place',
    way: 'edited',
    fields: {
      name,
      kind: plain(placeSchema.shape.kind),
      air: json(z.array(z.json()).length(12)),
      airSource: json(z.json().nullable()),
      airMovement: plain(placeSchema.shape.airMovement),
      latitude: numberOrNull,
      longitude: numberOrNull,
      note: text,
      closedAt: instantOrNull,
    },
  },
  stacks: {
    table: 'stack',
    way: 'edited',
    fields: {
      name,
      place: uuidOf('place'),
      endUseId: idOfCatalog,
      topCover: plain(stackSchema.shape.topCover),
      note: text,
      closedAt: instantOrNull,
    },
  },
  boards: {
    table: 'board',
    way: 'edited',
    fields: {
      code: plain(boardSchema.shape.code),
      stack: uuidOf('stack'),
      speciesId: idOfCatalog,
      thicknessMm: plain(boardSchema.shape.thicknessMm),
      thicknessQuarters: plain(boardSchema.shape.thicknessQuarters),
      widthMm: plain(boardSchema.shape.widthMm),
      lengthMm: plain(boardSchema.shape.lengthMm),
      sawnOn: dayOrNull,
      driedBy: plain(boardSchema.shape.driedBy),
      sawing: plain(boardSchema.shape.sawing),
      ringRadiusMm: plain(boardSchema.shape.ringRadiusMm),
      barkSide: plain(boardSchema.shape.barkSide),
      barkOffOn: dayOrNull,
      log: plain(boardSchema.shape.log),
      layer: plain(boardSchema.shape.layer),
      stackColumn: plain(boardSchema.shape.column),
      note: plain(boardSchema.shape.note),
      atEmcSince: plain(z.string().nullable()),
      archivedAt: instantOrNull,
      archivedWhy: json(z.json().nullable()),
    },
  },
  boardOrigins: {
    table: 'board_origin',
    way: 'edited',
    fields: { child: uuidOf('board'), parent: uuidOf('board'), how: text, at: instant },
  },
  moves: {
    table: 'move',
    way: 'edited',
    fields: { board: uuidOf('board'), place: uuidOf('place'), since: instant, datedBy },
  },
  plannedMoves: {
    table: 'planned_move',
    way: 'edited',
    fields: {
      stack: uuidOrNull('stack'),
      board: uuidOrNull('board'),
      place: uuidOf('place'),
      plannedOn: plain(z.iso.date()),
      note: text,
    },
  },
  projects: {
    table: 'project',
    way: 'edited',
    fields: { name, neededBy: dayOrNull, note: text, closedAt: instantOrNull },
  },
  reservations: {
    table: 'reservation',
    way: 'edited',
    fields: { board: uuidOf('board'), project: uuidOf('project') },
  },
  meters: {
    table: 'meter',
    way: 'edited',
    fields: {
      kind: text,
      deviceId: text,
      name: text,
      undoneAt: instantOrNull,
      closedAt: plain(instantSchema.nullable().default(null)),
    },
  },
  meterProfiles: {
    table: 'meter_profile',
    way: ['meter'],
    fields: { meter: uuidOrNull('meter'), version: plain(z.int()), record: anyJson, madeAt: instantOrNull },
  },
  rounds: {
    table: 'round',
    way: 'edited',
    fields: {
      stack: uuidOf('stack'),
      place: uuidOrAbsent('place'),
      startedAt: instant,
      finishedAt: instantOrNull,
      datedBy,
      meterProfile: uuidOrNull('meter_profile'),
      airTempC: numberOrNull,
      airRh: numberOrNull,
      note: text,
      lastBoard: uuidOrNull('board'),
      undoneAt: instantOrNull,
    },
  },
  confirmedSpecies: {
    table: 'confirmed_species',
    way: 'edited',
    fields: { board: uuidOf('board'), speciesId: idOfCatalog, confirmedAt: instant },
  },
  spotPlans: {
    table: 'spot_plan',
    way: ['round', 'board'],
    fields: { round: uuidOf('round'), board: uuidOrNull('board'), basis: anyJson, givenAt: instant },
  },
  woodTemperatures: {
    table: 'wood_temperature',
    way: ['round', 'board'],
    fields: { round: uuidOf('round'), board: uuidOrNull('board'), tempC: numberOrNull, givenAt: instant },
  },
  readings: {
    table: 'reading',
    way: 'added',
    fields: {
      round: uuidOf('round'),
      board: uuidOf('board'),
      spotIndex: plain(z.int().min(0).nullable()),
      spot: json(spotSchema),
      raw: number,
      unit,
      how: plain(takenHowSchema),
      settled: flag(z.boolean().nullable()),
      woodTempC: numberOrNull,
      meterProfile: uuidOrNull('meter_profile'),
      takenAt: instant,
    },
  },
  ovenChecks: {
    table: 'oven_check',
    way: 'added',
    fields: {
      speciesId: idOfCatalog,
      meterProfile: uuidOrNull('meter_profile'),
      piece: text,
      readings: json(z.array(z.number()).min(1)),
      unit,
      woodTempC: numberOrNull,
      wetGrams: number,
      balanceGrams: number,
      endRule: plain(z.enum(Object.keys(constantMassRules) as [string, ...string[]])),
      note: text,
      readAt: instant,
    },
  },
  ovenWeights: {
    table: 'oven_weight',
    way: 'added',
    fields: { check: uuidOf('oven_check'), grams: number, weighedAt: instant },
  },
  ownFitChoices: {
    table: 'own_fit_choice',
    way: ['speciesId', 'meter'],
    fields: { speciesId: idOfCatalog, meter: uuidOrNull('meter'), inUse: flag(), chosenAt: instant },
  },
  sampleCuts: {
    table: 'sample_cut',
    way: 'added',
    fields: { board: uuidOf('board'), boardKg: number, cutAt: instant },
  },
  sampleSections: {
    table: 'sample_section',
    way: 'added',
    fields: { cut: uuidOf('sample_cut'), wetGrams: number },
  },
  sampleSectionDryWeights: {
    table: 'sample_section_dry',
    way: ['section'],
    fields: { section: uuidOf('sample_section'), grams: number, weighedAt: instant },
  },
  sampleWeights: {
    table: 'sample_weight',
    way: 'added',
    fields: { board: uuidOf('board'), kg: number, weighedAt: instant },
  },
  testBlocks: {
    table: 'test_block',
    way: 'edited',
    fields: {
      name,
      expected: number,
      tolerance: number,
      unit,
      meter: uuidOrAbsent('meter'),
      checkEvery: plain(checkEverySchema.default('day')),
      closedAt: plain(instantSchema.nullable().default(null)),
    },
  },
  meterChecks: {
    table: 'meter_check',
    way: 'added',
    fields: {
      testBlock: uuidOf('test_block'),
      meterProfile: uuidOrNull('meter_profile'),
      round: uuidOrNull('round'),
      expected: number,
      tolerance: number,
      shown: number,
      tempC: plain(z.number().nullable().default(null)),
      checkedAt: instant,
    },
  },
  /** Why a check is excluded; null where it is included again. */
  checkExclusions: {
    table: 'check_exclusion',
    way: ['meterCheck'],
    fields: { meterCheck: uuidOf('meter_check'), excluded: anyJson, at: instant },
  },
  /** Whether readings are corrected by a check. */
  checkCorrections: {
    table: 'check_correction',
    way: ['meterCheck'],
    fields: { meterCheck: uuidOf('meter_check'), corrects: flag(), at: instant },
  },
  /** Corrections of what was measured. The value of `meterProfileId` is the UUID of a meter profile. */
  amendments: {
    table: 'amendment',
    way: ['reading', 'ovenCheck', 'ovenWeight', 'sampleCut', 'sampleWeight', 'field'],
    fields: {
      reading: uuidOrNull('reading'),
      ovenCheck: uuidOrNull('oven_check'),
      ovenWeight: uuidOrNull('oven_weight'),
      sampleCut: uuidOrNull('sample_cut'),
      sampleWeight: uuidOrNull('sample_weight'),
      field: text,
      value: anyJson,
      at: instant,
    },
  },
  labelPrints: {
    table: 'label_print',
    way: 'added',
    fields: { board: uuidOf('board'), contentHash: text, printedAt: instant },
  },
  /** The pictures themselves lie beside the yard file, each under the hash of its content. */
  pictures: {
    table: 'picture',
    way: 'edited',
    fields: {
      board: uuidOrNull('board'),
      stack: uuidOrNull('stack'),
      round: uuidOrNull('round'),
      reading: uuidOrNull('reading'),
      contentHash: plain(contentHashSchema),
      mediaType: plain(mediaTypeSchema),
      bytes: plain(z.int().positive()),
      caption: text,
      addedAt: instant,
    },
  },
  /** Thermometers and hygrometers, and where each was since when. */
  airSensors: {
    table: 'air_sensor',
    way: 'edited',
    fields: { name, deviceId: text, kind: plain(sensorKindSchema), closedAt: instantOrNull },
  },
  airSensorStays: {
    table: 'air_sensor_stay',
    way: 'edited',
    fields: { sensor: uuidOf('air_sensor'), place: uuidOrNull('place'), since: instant },
  },
  airLogs: {
    table: 'air_log',
    // What sensors log is of no place, and never another's.
    way: ['place', 'at'],
    fields: {
      place: uuidOrNull('place'),
      sensor: uuidOrNull('air_sensor'),
      at: instant,
      tempC: number,
      rh: plain(z.number().min(0).max(1)),
    },
  },
  /** Air that is not used because a person says so: of a day (UTC), or a value that was deleted or replaced. */
  airExclusions: {
    table: 'air_exclusion',
    way: 'edited',
    fields: { place: uuidOf('place'), day: dayOrNull, log: uuidOrNull('air_log') },
  },
  /** What a person chose. Meters in the values of `typing-meter` and `deleted-meters` are named by their UUIDs. */
  settings: {
    table: 'setting',
    way: 'edited',
    fields: { key: plain(z.enum(settingsOfPerson)), value: anyJson },
  },
  /** Records of other tables that hold no longer, because what added them was undone; each under the UUID of that record. */
  undoneRows: { table: 'undone_row', way: 'edited', fields: { inTable: text } },
} as const satisfies Record<string, YardTable>;

export type YardTableName = keyof typeof yardTables;
export const yardTableNames = Object.keys(yardTables) as YardTableName[];
export const tableOf = (named: YardTableName): YardTable => yardTables[named];
/** The name in an export of a table of the yard file; undefined of one that no export has. */
export const namedOfTable = (table: unknown): YardTableName | undefined =>
  yardTableNames.find((each) => tableOf(each).table === table);

/** One record: its UUID, and its fields. */
export type YardRecord = { uuid: string } & Record<string, unknown>;

const recordSchemas = Object.fromEntries(
  yardTableNames.map((named) => {
    const fields = Object.entries(tableOf(named).fields).map(([field, { schema }]) => [field, schema]);
    return [named, z.strictObject({ uuid: z.uuid(), ...Object.fromEntries(fields) })];
  }),
) as unknown as Record<YardTableName, z.ZodObject<{ uuid: z.ZodUUID }>>;

/** The schema of one record of a table. */
export const recordSchemaOf = (named: YardTableName): z.ZodType<YardRecord> =>
  recordSchemas[named] as unknown as z.ZodType<YardRecord>;

/** What an export of everything calls itself, and the version of its form. */
export const EXPORT_FORMAT = 'pintally-yard';
export const EXPORT_VERSION = 1;

/** What comes before the records of an export. */
export const exportHeadSchema = z.strictObject({
  format: z.literal(EXPORT_FORMAT),
  version: z.literal(EXPORT_VERSION),
  exportedAt: instantSchema,
});
export type ExportHead = z.infer<typeof exportHeadSchema>;

/** The whole file. Records are in the order in which they were entered. Earlier exports have no files of pictures. */
export const exportSchema = exportHeadSchema.extend({
  ...Object.fromEntries(yardTableNames.map((named) => [named, z.array(recordSchemas[named])])),
  [PICTURE_FILES]: z.array(picturePartSchema).optional(),
});

/** The same as JSON Schema, draft 2020-12. */
export const exportJsonSchema = () => ({
  $id: `urn:${EXPORT_FORMAT}:${EXPORT_VERSION}`,
  ...z.toJSONSchema(exportSchema, { io: 'input', reused: 'ref' }),
});
