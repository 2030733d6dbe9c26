import { sql as sql0001 } from './migrations/0001-first-tables.ts';
import { sql as sql0002 } from './migrations/0002-oven-checks.ts';
import { sql as sql0003 } from './migrations/0003-sample-boards.ts';
import { sql as sql0004 } from './migrations/0004-round-comparisons.ts';
import { sql as sql0005 } from './migrations/0005-end-grain.ts';
import { sql as sql0006 } from './migrations/0006-findings-due.ts';
import { sql as sql0007 } from './migrations/0007-confirmed-wood.ts';
import { sql as sql0008 } from './migrations/0008-top-cover.ts';
import { sql as sql0009 } from './migrations/0009-bark-off.ts';

/**
 * Numbered migrations, one a file, applied in order and never edited once landed. The number of those applied is
 * `user_version`. Instants are UTC ISO 8601 texts, days are ISO dates.
 */
export const migrations: readonly string[] = [
  sql0001,
  sql0002,
  sql0003,
  sql0004,
  sql0005,
  sql0006,
  sql0007,
  sql0008,
  sql0009,
];
