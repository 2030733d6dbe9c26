import { z } from 'zod';

/** What was saved of a damaged yard file. */
export const salvageReportSchema = z.object({
  kinds: z.array(
    z.object({
      kind: z.enum(['places', 'stacks', 'boards', 'rounds', 'readings', 'other']),
      saved: z.number().int(),
      /** At least so many: where pages are gone, nobody can count what was on them. */
      lost: z.number().int(),
    }),
  ),
  /** Names given to stacks and boards whose own entry is lost. */
  recovered: z.array(z.string()),
});
export type SalvageReport = z.infer<typeof salvageReportSchema>;
