import {
  type NewSampleCut,
  type SampleCut,
  type SampleRecord,
  type SampleSection,
  type SampleWeight,
  sampleCutSchema,
  sampleWeightSchema,
} from '../../shared-core/contract/sample-board.ts';
import { amended, exclusionOf } from './amendment-table.ts';
import { rowAppender } from './columns.ts';
import { keptRecord, sameBoard } from './lineage.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

type CutRecord = Omit<SampleCut, 'sections' | 'excluded'> & { amendments: string };
type WeightRecord = Omit<SampleWeight, 'excluded'> & { amendments: string };

/** Boards that are followed by their weight. What was weighed is only ever added to. */
export function sampleBoardReads(db: Db) {
  const cuts = db.prepare<{ boardId: number }, CutRecord>(
    `SELECT c.id, c.board_kg AS boardKg, c.cut_at AS at, ${amended('sampleCut', 'c')} AS amendments
     FROM sample_cut c WHERE c.board_id IN ${sameBoard('@boardId')} AND ${holds('c')} ORDER BY julianday(c.cut_at), c.id`,
  );
  const sections = db.prepare<[number], SampleSection>(
    `SELECT s.id, s.wet_grams AS wetGrams,
       (SELECT d.grams FROM sample_section_dry d WHERE d.section_id = s.id AND ${holds('d')} ORDER BY d.id DESC LIMIT 1) AS dryGrams
     FROM sample_section s WHERE s.cut_id = ? ORDER BY s.id`,
  );
  const weights = db.prepare<{ boardId: number }, WeightRecord>(
    `SELECT w.id, w.kg, w.weighed_at AS at, ${amended('sampleWeight', 'w')} AS amendments
     FROM sample_weight w WHERE w.board_id IN ${sameBoard('@boardId')} AND ${holds('w')} ORDER BY julianday(w.weighed_at), w.id`,
  );
  const section = db.prepare<[number], { boardId: number; wetGrams: number }>(
    `SELECT ${keptRecord('c.board_id')} AS boardId, s.wet_grams AS wetGrams
     FROM sample_section s JOIN sample_cut c ON c.id = s.cut_id WHERE s.id = ? AND ${holds('c')}`,
  );
  const boardIds = db.prepare<[], { boardId: number }>(
    `SELECT DISTINCT ${keptRecord('c.board_id')} AS boardId FROM sample_cut c WHERE ${holds('c')} ORDER BY boardId`,
  );
  const boardOfCut = db.prepare<[number], { boardId: number }>(
    `SELECT ${keptRecord('c.board_id')} AS boardId FROM sample_cut c WHERE id = ? AND ${holds('c')}`,
  );
  const boardOfWeight = db.prepare<[number], { boardId: number }>(
    `SELECT ${keptRecord('w.board_id')} AS boardId FROM sample_weight w WHERE id = ? AND ${holds('w')}`,
  );
  return {
    /** Oldest first, excluded ones too. */
    cuts: (boardId: number): SampleCut[] =>
      cuts.all({ boardId }).map(({ amendments, ...cut }) =>
        sampleCutSchema.parse({
          ...cut,
          sections: sections.all(cut.id),
          excluded: exclusionOf(amendments),
        }),
      ),
    /** Oldest first, excluded ones too. */
    weights: (boardId: number): SampleWeight[] =>
      weights
        .all({ boardId })
        .map(({ amendments, ...weight }) =>
          sampleWeightSchema.parse({ ...weight, excluded: exclusionOf(amendments) }),
        ),
    section: (id: number): { boardId: number; wetGrams: number } | undefined => section.get(id),
    /** The boards that sections were cut beside. */
    boardIds: (): number[] => boardIds.all().map((row) => row.boardId),
    boardOf: ({ what, id }: SampleRecord): number | undefined =>
      (what === 'cut' ? boardOfCut : boardOfWeight).get(id)?.boardId,
  };
}

export function sampleBoardWrites(db: Db) {
  const addCut = rowAppender(db, 'sample_cut', { boardId: 'board_id', boardKg: 'board_kg', at: 'cut_at' });
  const addSection = rowAppender(db, 'sample_section', { cutId: 'cut_id', wetGrams: 'wet_grams' });
  const addDry = rowAppender(db, 'sample_section_dry', {
    sectionId: 'section_id',
    grams: 'grams',
    at: 'weighed_at',
  });
  const addWeight = rowAppender(db, 'sample_weight', { boardId: 'board_id', kg: 'kg', at: 'weighed_at' });
  return {
    /** Together with its sections or not at all. */
    cut: db.transaction(({ boardId, boardKg, wetGrams, at }: NewSampleCut): void => {
      const cutId = addCut({ boardId, boardKg, at });
      for (const grams of wetGrams) addSection({ cutId, wetGrams: grams });
    }),
    drySection: (sectionId: number, grams: number, at: string): void => {
      addDry({ sectionId, grams, at });
    },
    weigh: (boardId: number, kg: number, at: string): void => {
      addWeight({ boardId, kg, at });
    },
  };
}
