import { z } from 'zod';

/** In the order of the report. */
export const salvageKinds = ['stacks', 'boards', 'readings', 'rounds', 'places', 'other'] as const;
export type SalvageKind = (typeof salvageKinds)[number];

/** What was recovered from a damaged yard file. */
export const salvageReportSchema = z.object({
  kinds: z.array(
    z.object({
      kind: z.enum(salvageKinds),
      saved: z.number().int(),
      /** At least so many: where pages are gone, nobody can count what was on them. */
      lost: z.number().int(),
    }),
  ),
  /** Names given to stacks and boards whose own entry is lost. */
  recovered: z.array(z.string()),
  /** The name that the damaged file was given; null where that is not known. */
  damagedFile: z.string().nullable().default(null),
  /** Where rounds whose own entry is lost were made again: the time of a reading in each, UTC. */
  roundsMadeAgain: z.array(z.string()).default([]),
});
export type SalvageReport = z.infer<typeof salvageReportSchema>;
