import { z } from 'zod';

/** Percent by mass or size, 0 to 100. */
const pct = z.number().min(0).max(100);

/** What is known of one species. Every figure may be missing: a missing figure is shown as such and never guessed. */
export const speciesSchema = z.object({
  /** Lower-case words joined by hyphens, never changed: `oak-northern-red`. */
  id: z
    .string()
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
    .max(60),
  /** Common name, the noun last as the trade says it: "Northern red oak". */
  name: z.string().trim().min(1).max(80),
  botanicalName: z.string().max(120).nullable(),
  /** Under which the list of species shows it: "Red oaks", "Soft pines", "Maples". */
  group: z.string().trim().min(1).max(60),
  /** Other names that a sawyer may type for it. */
  aliases: z.array(z.string().trim().min(1).max(60)).max(40),
  /** Oven-dry mass over green volume, relative to water. */
  basicSpecificGravity: z.number().min(0.05).max(1.4).nullable(),
  /** Shrinkage from green to oven-dry, % of the green size. */
  radialPct: pct.nullable(),
  tangentialPct: pct.nullable(),
  volumetricPct: pct.nullable(),
  /** Dimensional change per % of MC, 6 to 14 % MC, as a fraction of the size. */
  changeCoefficient: z
    .object({ radial: z.number().min(0).max(0.02), tangential: z.number().min(0).max(0.02) })
    .nullable(),
  /** The resistance curve that corrects readings of this species (key in `seeds/resistance-curves.json`), if one is published. */
  curveId: z.string().max(60).nullable(),
  /** Linear species coefficients a and b of a meter that shows %, if published or fitted. */
  linear: z.object({ a: z.number().min(0.2).max(5), b: z.number().min(-30).max(30) }).nullable(),
  /** What a person should know about it. */
  note: z.string().max(1000),
  /** Where the figures come from; "(from memory)" follows what was not checked against a page. */
  source: z.string().max(1000),
});
export type Species = z.infer<typeof speciesSchema>;

/** What a species has of which nothing but its name is known. */
export const onlyNamed = {
  botanicalName: null,
  aliases: [],
  basicSpecificGravity: null,
  radialPct: null,
  tangentialPct: null,
  volumetricPct: null,
  changeCoefficient: null,
  curveId: null,
  linear: null,
  note: '',
  source: '',
} satisfies Partial<Species>;
