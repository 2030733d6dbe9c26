import { z } from 'zod';
import { readingReasons } from '../probing/readings/exclusion.ts';
import { says } from './validation.ts';
import { boardGivenOn, dayUntil } from './yard.ts';

/** What can be changed of several boards. A blank field would erase many values. */
const editSchemaOn = (today: string) => {
  const { shape } = boardGivenOn(today);
  return z.object({
    speciesId: shape.speciesId,
    thicknessMm: shape.thicknessMm,
    thicknessQuarters: shape.thicknessQuarters,
    widthMm: shape.widthMm.unwrap(),
    lengthMm: shape.lengthMm.unwrap(),
    sawnOn: shape.sawnOn.refine((day) => day !== null, says('validation.day-missing')),
    driedBy: shape.driedBy,
    log: shape.log.min(1, says('validation.missing')),
    sawing: shape.sawing,
    barkSide: shape.barkSide,
    barkOffOn: shape.barkOffOn,
    ringRadiusMm: shape.ringRadiusMm.unwrap(),
    placeId: z.int(says('validation.place-missing')),
    since: dayUntil(today),
    /** Of the move; blank: not known. */
    time: z.string(),
    endUseId: z.string().min(1, says('validation.use-missing')),
    readings: z.enum(['include', ...readingReasons]),
  });
};
type Edit = ReturnType<typeof editSchemaOn>;
export type EditOfBoards = z.input<Edit>;

/** The parts of the form by what turns them on, each with its fields. */
const parts = {
  species: ['speciesId'],
  thickness: ['thicknessMm', 'thicknessQuarters'],
  width: ['widthMm'],
  length: ['lengthMm'],
  'sawn-on': ['sawnOn'],
  'dried-by': ['driedBy'],
  log: ['log'],
  sawing: ['sawing'],
  'bark-side': ['barkSide', 'barkOffOn'],
  pith: ['ringRadiusMm'],
  place: ['placeId', 'since', 'time'],
  use: ['endUseId'],
  readings: ['readings'],
  order: [],
} as const satisfies Record<string, readonly (keyof EditOfBoards)[]>;
export type Part = keyof typeof parts;
export const partNames = Object.keys(parts) as Part[];

/** Checks the fields of these parts, and leaves out the others. */
export const schemaOf = (on: ReadonlySet<Part>, today: string) =>
  editSchemaOn(today).pick(
    Object.fromEntries([...on].flatMap((part) => parts[part]).map((field) => [field, true])) as Record<
      keyof EditOfBoards,
      true
    >,
  ) as unknown as z.ZodType<Partial<z.output<Edit>>, EditOfBoards>;
