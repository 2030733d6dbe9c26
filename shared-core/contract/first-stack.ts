import { z } from 'zod';
import {
  boardGivenOn,
  boardSchema,
  daySchema,
  dayUntil,
  givenBoardSchema,
  newPlaceSchema,
  stackSchema,
} from './yard.ts';

/** As many boards as are added in one go. */
export const MOST_AT_ONCE = 500;

/** What a person says of their first stack; everything else can come later. */
export const firstStackSchema = z.object({
  /** Blank: it is called by its species. */
  name: z.union([z.literal(''), stackSchema.shape.name]),
  speciesId: boardSchema.shape.speciesId,
  thicknessMm: boardSchema.shape.thicknessMm,
  thicknessQuarters: boardSchema.shape.thicknessQuarters,
  sawnOn: givenBoardSchema.shape.sawnOn,
  /** Local day since when it has been at its place; null for today. */
  hereSinceOn: daySchema.nullable(),
  driedBy: boardSchema.shape.driedBy,
  endUseId: stackSchema.shape.endUseId,
  boards: z
    .number()
    .int()
    .min(1)
    .refine((boards) => boards <= MOST_AT_ONCE, {
      error: 'validation.most-at-once',
      params: { most: MOST_AT_ONCE },
    }),
});
export type FirstStack = z.infer<typeof firstStackSchema>;

/** The same where the day is known, so that no date is in the future. */
export const firstStackOn = (today: string) =>
  firstStackSchema.extend({
    sawnOn: boardGivenOn(today).shape.sawnOn,
    hereSinceOn: dayUntil(today).nullable(),
  });

/** With the place where it is. A place of that name and air that is there already is taken. */
export const startedStackSchema = firstStackSchema.extend({
  place: newPlaceSchema,
  sawnOn: firstStackSchema.shape.sawnOn.default(null),
  hereSinceOn: firstStackSchema.shape.hereSinceOn.default(null),
  driedBy: firstStackSchema.shape.driedBy.default('air'),
  endUseId: firstStackSchema.shape.endUseId.default('furniture'),
});
