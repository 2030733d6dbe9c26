import { z } from 'zod';

export const csvKinds = ['boards', 'readings', 'calls', 'forecasts'] as const;
export type CsvKind = (typeof csvKinds)[number];

/** What an export holds: everything that a person entered, as JSON; or a table of it, as CSV. */
export const exportKindSchema = z.enum(['everything', ...csvKinds]);
export type ExportKind = z.infer<typeof exportKindSchema>;
