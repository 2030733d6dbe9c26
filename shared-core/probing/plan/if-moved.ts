/** What a move of some boards would bring, place by place, for the form that asks where to. */
import { z } from 'zod';
import { messageSchema } from '../../words/message.ts';
import { cautionsOfMove } from '../calls/cautions.ts';
import type { JudgedPlace, Judgement } from '../calls/judgement.ts';
import { type Ready, readySchema, whenOf, whenSchema } from '../calls/ready-in.ts';

export const ifMovedSchema = z.object({
  boards: z.number().int(),
  places: z.array(
    z.object({
      placeId: z.number().int(),
      placeName: z.string(),
      /** % MC; null where its air is not known. */
      lowestEmcPct: z.number().nullable(),
      /** Of one board; null where no day is stated, and of several boards. */
      ready: readySchema.nullable(),
      /** Whether forecasts say anything of it. */
      isForecast: z.boolean(),
      /** Of boards that are unlikely to get there, the driest that each gets, % MC; null where none is known. */
      driestInterval: z.object({ minPct: z.number(), maxPct: z.number() }).nullable(),
      /** Boards that are dry enough and take up too much moisture there. */
      leaving: z.number().int(),
      /** Boards with a day there, and the last of their days; null without any. */
      dated: z.number().int(),
      last: whenSchema.nullable(),
      /** Whether each of them is ready by its latest day with 9 chances in 10: of none is that day open. */
      isLikely: z.boolean(),
      cautions: z.array(messageSchema),
    }),
  ),
});
export type IfMoved = z.infer<typeof ifMovedSchema>;

/** A board to be moved, as its row has it. */
interface Moving {
  placeId: number;
  judgement: Pick<Judgement, 'places' | 'average'>;
  corePct: number | null;
}

export function ifMoved(boards: readonly Moving[], places: readonly JudgedPlace[]): IfMoved {
  const wettest = {
    averagePct: Math.max(0, ...boards.map(({ judgement: { average } }) => average?.averagePct ?? 0)),
    corePct: Math.max(0, ...boards.map(({ corePct }) => corePct ?? 0)),
  };
  const left = new Set(boards.map(({ placeId }) => placeId));
  const origins = places.filter(({ placeId }) => left.has(placeId));
  return {
    boards: boards.length,
    places: places.map(({ placeId, name, kind, lowestEmc }) => {
      const readies = boards.flatMap(
        ({ judgement }) => judgement.places.find((each) => each.placeId === placeId)?.ready ?? [],
      );
      const whens = readies.flatMap((ready) => whenOf(ready) ?? []);
      const dated = readies.filter(isDated);
      const cautions = origins.flatMap((from) => cautionsOfMove(from.kind, kind, wettest));
      return {
        placeId,
        placeName: name,
        lowestEmcPct: lowestEmc?.emcPct ?? null,
        ready: boards.length === 1 ? (readies[0] ?? null) : null,
        isForecast: readies.length > 0,
        driestInterval: intervalOf(readies.flatMap((ready) => driestOf(ready) ?? [])),
        leaving: readies.filter(({ kind }) => kind === 'leaves').length,
        dated: dated.length,
        last: whens.toSorted((a, b) => a.likely.localeCompare(b.likely)).at(-1) ?? null,
        isLikely: dated.every((ready) => ready.kind === 'now' || whenOf(ready)?.to != null),
        cautions: [...new Map(cautions.map((each) => [each.code, each])).values()],
      };
    }),
  };
}

const driestOf = (ready: Ready): number | null => ('driestPct' in ready ? ready.driestPct : null);

const intervalOf = (values: readonly number[]) =>
  values.length === 0 ? null : { minPct: Math.min(...values), maxPct: Math.max(...values) };

const isDated = ({ kind }: Ready): boolean => kind === 'likely' || kind === 'any-day' || kind === 'now';
