import { boardTable } from './board-table.ts';
import { endUsesTable, speciesTable } from './catalogue-tables.ts';
import { meterTable } from './meter-table.ts';
import { ovenCheckTable } from './oven-check-table.ts';
import { placeTable } from './place-table.ts';
import { roundComparisonTable } from './round-comparison-table.ts';
import { roundTable } from './round-table.ts';
import { sampleBoardTable } from './sample-board-table.ts';
import { settingTable } from './setting-table.ts';
import { stackTable } from './stack-table.ts';
import { allowWriting, asProblem, type Db, openYardFile } from './yard-file.ts';

/**
 * One open yard file with its tables. `lookedThrough` is false for a large one that may be damaged and refuses to be
 * written until `allowWriting`; see `openYardFile`.
 * @throws YardFileProblem with a sentence for a person
 */
export function openYard(file: string) {
  const { db, integrityChecked } = openYardFile(file);
  try {
    return { file, integrityChecked, allowWriting: () => allowWriting(db), ...tablesOf(db) };
  } catch (error) {
    db.close();
    throw asProblem(error, file);
  }
}
export type Yard = ReturnType<typeof openYard>;

function tablesOf(db: Db) {
  return {
    places: placeTable(db),
    stacks: stackTable(db),
    boards: boardTable(db),
    rounds: roundTable(db),
    comparisons: roundComparisonTable(db),
    meters: meterTable(db),
    ovenChecks: ovenCheckTable(db),
    samples: sampleBoardTable(db),
    species: speciesTable(db),
    endUses: endUsesTable(db),
    settings: settingTable(db),
    /** Runs all of `work` or none of it. */
    transaction: <T>(work: () => T): T => db.transaction(work).immediate(),
    close: (): void => {
      db.close();
    },
  };
}
