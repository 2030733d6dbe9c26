import * as firstTables from './migrations/0001-first-tables.ts';
import * as ovenChecks from './migrations/0002-oven-checks.ts';
import * as sampleBoards from './migrations/0003-sample-boards.ts';
import * as roundComparisons from './migrations/0004-round-comparisons.ts';
import * as endGrain from './migrations/0005-end-grain.ts';
import * as findingsDue from './migrations/0006-findings-due.ts';
import * as confirmedWood from './migrations/0007-confirmed-wood.ts';
import * as topCover from './migrations/0008-top-cover.ts';
import * as barkOff from './migrations/0009-bark-off.ts';
import * as oneLayout from './migrations/0010-one-layout.ts';
import * as outlooks from './migrations/0011-outlooks.ts';
import * as airOffsets from './migrations/0012-air-offsets.ts';
import * as instants from './migrations/0013-instants.ts';
import * as unfinishedActs from './migrations/0014-unfinished-acts.ts';
import * as boardsOfRound from './migrations/0015-boards-of-round.ts';
import * as namesApart from './migrations/0016-names-apart.ts';
import * as tooDry from './migrations/0017-too-dry.ts';
import * as spotPlans from './migrations/0018-spot-plans.ts';
import * as airMovement from './migrations/0019-air-movement.ts';
import * as coreHistories from './migrations/0020-core-histories.ts';
import * as callsInRecords from './migrations/0021-calls-in-records.ts';
import * as halfProbed from './migrations/0022-half-probed.ts';
import * as driedBy from './migrations/0023-dried-by.ts';
import * as learnedAir from './migrations/0024-learned-air.ts';
import * as learnedSurface from './migrations/0025-learned-surface.ts';
import * as undoneRows from './migrations/0026-undone-rows.ts';
import * as archivedBoards from './migrations/0027-archived-boards.ts';
import * as mergedActs from './migrations/0028-merged-acts.ts';
import * as pictures from './migrations/0029-pictures.ts';
import * as foundByOwner from './migrations/0030-found-by-owner.ts';
import * as lineage from './migrations/0031-lineage.ts';
import * as lostRows from './migrations/0032-lost-rows.ts';
import * as dueOnce from './migrations/0033-due-once.ts';
import * as mergedBy from './migrations/0034-merged-by.ts';
import * as nextProbe from './migrations/0035-next-probe.ts';
import * as placeOfRound from './migrations/0036-place-of-round.ts';
import * as meterChecks from './migrations/0037-meter-checks.ts';
import * as airLogs from './migrations/0038-air-logs.ts';
import * as checkExclusions from './migrations/0039-check-exclusions.ts';
import * as airExclusions from './migrations/0040-air-exclusions.ts';
import * as closedMeters from './migrations/0041-closed-meters.ts';
import * as checkCorrections from './migrations/0042-check-corrections.ts';
import * as boardByText from './migrations/0043-board-by-text.ts';
import type { Db } from './yard-file.ts';

export interface Migration {
  sql: string;
  /** Gives the connection the functions that `sql` uses. */
  prepare?(db: Db): void;
}

/**
 * Numbered migrations, one a file, applied in order and never edited once landed. The number of those applied is
 * `user_version`. Instants are UTC ISO 8601 texts with milliseconds (`instantSchema`), days are ISO dates.
 */
export const migrations: readonly Migration[] = [
  firstTables,
  ovenChecks,
  sampleBoards,
  roundComparisons,
  endGrain,
  findingsDue,
  confirmedWood,
  topCover,
  barkOff,
  oneLayout,
  outlooks,
  airOffsets,
  instants,
  unfinishedActs,
  boardsOfRound,
  namesApart,
  tooDry,
  spotPlans,
  airMovement,
  coreHistories,
  callsInRecords,
  halfProbed,
  driedBy,
  learnedAir,
  learnedSurface,
  undoneRows,
  archivedBoards,
  mergedActs,
  pictures,
  foundByOwner,
  lineage,
  lostRows,
  dueOnce,
  mergedBy,
  nextProbe,
  placeOfRound,
  meterChecks,
  airLogs,
  checkExclusions,
  airExclusions,
  closedMeters,
  checkCorrections,
  boardByText,
];
