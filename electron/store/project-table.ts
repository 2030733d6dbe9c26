import type { z } from 'zod';
import type { ProjectFields, projectSchema } from '../../shared-core/contract/requests/dates.ts';
import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import type { Db } from './yard-file.ts';

type Project = z.infer<typeof projectSchema>;

const newColumns: Columns<ProjectFields> = { name: 'name', neededBy: 'needed_by', note: 'note' };
const columns: Columns<Project> = { id: 'id', version: 'version', uuid: 'uuid', ...newColumns };
interface Reservation {
  boardId: number;
  projectId: number;
}
const reservationColumns: Columns<Reservation> = { boardId: 'board_id', projectId: 'project_id' };

/** What boards are reserved for. */
export function projectReads(db: Db) {
  const select = `SELECT ${selected(columns, 'p')} FROM project p`;
  const one = db.prepare<[number], Project>(`${select} WHERE p.id = ?`);
  const all = db.prepare<[], Project>(
    `${select} WHERE p.closed_at IS NULL ORDER BY p.needed_by IS NULL, p.needed_by, p.name`,
  );
  const boards = db.prepare<[number], { boardId: number }>(
    `SELECT r.board_id AS boardId FROM reservation r JOIN board b ON b.id = r.board_id
     WHERE r.project_id = ? AND b.archived_at IS NULL ORDER BY b.code`,
  );
  const ofBoard = db.prepare<[number], Project>(
    `${select} JOIN reservation r ON r.project_id = p.id WHERE r.board_id = ?`,
  );
  const reserved = db.prepare<[string], { boardCode: string; projectName: string; boards: number }>(
    `SELECT b.code AS boardCode, p.name AS projectName, COUNT(*) OVER () AS boards
     FROM reservation r JOIN board b ON b.id = r.board_id JOIN project p ON p.id = r.project_id
     WHERE r.board_id IN (SELECT value FROM json_each(?)) ORDER BY b.code LIMIT 1`,
  );
  return {
    get: (id: number): Project | undefined => one.get(id),
    /** The one needed first comes first. */
    list: (): Project[] => all.all(),
    boardIds: (id: number): number[] => boards.all(id).map(({ boardId }) => boardId),
    ofBoard: (boardId: number): Project | undefined => ofBoard.get(boardId),
    /** Of these boards, the first that is reserved, for what, and how many are. */
    reservedAmong: (boardIds: readonly number[]) => reserved.get(JSON.stringify(boardIds)),
  };
}

export function projectWrites(db: Db, { get }: ReturnType<typeof projectReads>) {
  const free = db.prepare('DELETE FROM reservation WHERE board_id = ?');
  const change = db.prepare(
    'UPDATE reservation SET project_id = ?, version = version + 1 WHERE board_id = ?',
  );
  const freeAlso = db.prepare<[string], { boardId: number }>(
    'DELETE FROM reservation WHERE board_id IN (SELECT value FROM json_each(?)) RETURNING board_id AS boardId',
  );
  const freeAll = db.prepare('DELETE FROM reservation WHERE project_id = ?');
  const remove = db.prepare('DELETE FROM project WHERE id = ? AND version = ?');
  const reserve = recordAdder(db, 'reservation', reservationColumns);
  return {
    add: recordAdder(db, 'project', newColumns),
    edit: recordEditor(db, 'project', newColumns, get),
    /** With its reservations. @returns whether it was at that version */
    remove: (id: number, basedOn: number): boolean => {
      freeAll.run(id);
      return remove.run(id, basedOn).changes > 0;
    },
    /** @returns which of these boards were reserved */
    release: (boardIds: readonly number[]): number[] =>
      freeAlso.all(JSON.stringify(boardIds)).map(({ boardId }) => boardId),
    /** A board is reserved for one project at most; null: for none. */
    reserve: (boardId: number, projectId: number | null): void => {
      if (projectId === null) free.run(boardId);
      else if (change.run(projectId, boardId).changes === 0) reserve({ boardId, projectId });
    },
  };
}
