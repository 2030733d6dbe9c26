import { z } from 'zod';
import {
  type CoreWay,
  coreWaySchema,
  type PlanBasis,
  planBasisSchema,
} from '../../shared-core/probing/readings/plan-basis.ts';
import { type Columns, rowAppender } from './columns.ts';
import { sameWood } from './lineage.ts';
import { parsedOnce } from './parsed-once.ts';
import { readJson } from './read-json.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

interface SavedPlan {
  roundId: number;
  /** Null: the choice of a way to the core, for all boards of the round that are not read yet. */
  boardId: number | null;
  /** JSON. */
  basis: string;
  givenAt: string;
}

const columns: Columns<SavedPlan> = {
  roundId: 'round_id',
  boardId: 'board_id',
  basis: 'basis',
  givenAt: 'given_at',
};

/** One that the disk damaged is treated as missing. */
const basisOf = parsedOnce((text: string) => readJson(planBasisSchema, text) ?? null);
const choiceSchema = z.object({ core: coreWaySchema.nullable() });

/** What the spots of a round's boards were planned by. */
export function spotPlanReads(db: Db) {
  const newest = `FROM spot_plan p WHERE ${holds('p')} AND round_id = ? AND board_id IS`;
  const ofRound = db.prepare<[number], { basis: string }>(
    `SELECT basis ${newest} NULL ORDER BY id DESC LIMIT 1`,
  );
  const ofBoard = db.prepare<{ roundId: number; boardId: number }, { basis: string }>(
    `SELECT basis FROM spot_plan p WHERE ${holds('p')} AND round_id = @roundId
       AND board_id IN ${sameWood('@boardId', '@roundId')} ORDER BY board_id <> @boardId, id DESC LIMIT 1`,
  );
  const ofBoards = db.prepare<[number], { boardId: number; basis: string }>(
    `SELECT board_id AS boardId, basis ${newest} NOT NULL ORDER BY id`,
  );
  return {
    /** The way to the core for boards that are not read yet; null for none, undefined where nobody chose. */
    ofRound: (roundId: number): CoreWay | null | undefined =>
      readJson(choiceSchema, ofRound.get(roundId)?.basis ?? '')?.core,
    /** Its own, or that of what it came from; null for a board without one. */
    ofBoard: (roundId: number, boardId: number): PlanBasis | null => {
      const row = ofBoard.get({ roundId, boardId });
      return row === undefined ? null : basisOf(row.basis);
    },
    /** Those of all boards that have one. */
    ofBoards: (roundId: number): ReadonlyMap<number, PlanBasis | null> =>
      new Map(ofBoards.all(roundId).map(({ boardId, basis }) => [boardId, basisOf(basis)])),
  };
}

export function spotPlanWrites(db: Db) {
  const append = rowAppender(db, 'spot_plan', columns);
  return {
    give: (plan: Omit<SavedPlan, 'boardId' | 'basis'> & { boardId: number; basis: PlanBasis }): void => {
      append({ ...plan, basis: JSON.stringify(plan.basis) });
    },
    /** Of all boards of the round that are not read yet. */
    giveForRound: ({
      core,
      ...plan
    }: Pick<SavedPlan, 'roundId' | 'givenAt'> & Pick<PlanBasis, 'core'>): void => {
      append({ ...plan, boardId: null, basis: JSON.stringify({ core }) });
    },
  };
}
