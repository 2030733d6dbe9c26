import {
  type NewSampleCut,
  type SampleCut,
  type SampleRecord,
  type SampleSection,
  type SampleWeight,
  sampleCutSchema,
} from '../../shared-core/contract/sample-board.ts';
import type { Db } from './yard-file.ts';

type CutRecord = Omit<SampleCut, 'sections'>;

/** Boards that are followed by their mass. What was weighed is only ever added to. */
export function sampleBoardTable(db: Db) {
  const cuts = db.prepare<[number], CutRecord>(
    `SELECT c.id, c.board_kg AS boardKg, c.cut_at AS at,
       (SELECT k.why FROM sample_mark k WHERE k.cut_id = c.id ORDER BY k.id DESC LIMIT 1) AS excluded
     FROM sample_cut c WHERE c.board_id = ? ORDER BY c.cut_at, c.id`,
  );
  const sections = db.prepare<[number], SampleSection>(
    `SELECT s.id, s.wet_grams AS wetGrams,
       (SELECT d.grams FROM sample_section_dry d WHERE d.section_id = s.id ORDER BY d.id DESC LIMIT 1) AS dryGrams
     FROM sample_section s WHERE s.cut_id = ? ORDER BY s.id`,
  );
  const weights = db.prepare<[number], SampleWeight>(
    `SELECT m.id, m.kg, m.weighed_at AS at,
       (SELECT k.why FROM sample_mark k WHERE k.mass_id = m.id ORDER BY k.id DESC LIMIT 1) AS excluded
     FROM sample_mass m WHERE m.board_id = ? ORDER BY m.weighed_at, m.id`,
  );
  const section = db.prepare<[number], { boardId: number; wetGrams: number }>(
    `SELECT c.board_id AS boardId, s.wet_grams AS wetGrams
     FROM sample_section s JOIN sample_cut c ON c.id = s.cut_id WHERE s.id = ?`,
  );
  const boardOfCut = db.prepare<[number], { boardId: number }>(
    'SELECT board_id AS boardId FROM sample_cut WHERE id = ?',
  );
  const boardOfWeight = db.prepare<[number], { boardId: number }>(
    'SELECT board_id AS boardId FROM sample_mass WHERE id = ?',
  );
  const addCut = db.prepare('INSERT INTO sample_cut (board_id, board_kg, cut_at) VALUES (?, ?, ?)');
  const addSection = db.prepare('INSERT INTO sample_section (cut_id, wet_grams) VALUES (?, ?)');
  const addDry = db.prepare(
    'INSERT INTO sample_section_dry (section_id, grams, weighed_at) VALUES (?, ?, ?)',
  );
  const addWeight = db.prepare('INSERT INTO sample_mass (board_id, kg, weighed_at) VALUES (?, ?, ?)');
  const mark = db.prepare('INSERT INTO sample_mark (cut_id, mass_id, why, marked_at) VALUES (?, ?, ?, ?)');

  return {
    /** Oldest first, set-aside ones too. */
    cuts: (boardId: number): SampleCut[] =>
      cuts.all(boardId).map((cut) => sampleCutSchema.parse({ ...cut, sections: sections.all(cut.id) })),
    /** Oldest first, set-aside ones too. */
    weights: (boardId: number): SampleWeight[] => weights.all(boardId),
    section: (id: number): { boardId: number; wetGrams: number } | undefined => section.get(id),
    boardOf: ({ what, id }: SampleRecord): number | undefined =>
      (what === 'cut' ? boardOfCut : boardOfWeight).get(id)?.boardId,
    /** Together with its sections or not at all. */
    cut: db.transaction(({ boardId, boardKg, wetGrams, at }: NewSampleCut): void => {
      const cutId = Number(addCut.run(boardId, boardKg, at).lastInsertRowid);
      for (const grams of wetGrams) addSection.run(cutId, grams);
    }),
    drySection: (sectionId: number, grams: number, at: string): void => {
      addDry.run(sectionId, grams, at);
    },
    weigh: (boardId: number, kg: number, at: string): void => {
      addWeight.run(boardId, kg, at);
    },
    /** Sets a cut or a mass aside for a reason, or puts it back where `why` is null. */
    mark: ({ what, id }: SampleRecord, why: string | null, at: string): void => {
      mark.run(what === 'cut' ? id : null, what === 'weight' ? id : null, why, at);
    },
  };
}
