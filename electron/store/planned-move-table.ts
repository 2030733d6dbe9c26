import type { PlannedMove } from '../../shared-core/contract/requests/dates.ts';
import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import type { Db } from './yard-file.ts';

type NewPlannedMove = Omit<PlannedMove, 'id' | 'version' | 'uuid'>;

const newColumns: Columns<NewPlannedMove> = {
  stackId: 'stack_id',
  boardId: 'board_id',
  placeId: 'place_id',
  plannedOn: 'planned_on',
  note: 'note',
};
const columns: Columns<PlannedMove> = { id: 'id', version: 'version', uuid: 'uuid', ...newColumns };

/** With the name of the stack, or the board's ID. */
interface PlannedMoveRow extends PlannedMove {
  name: string;
  placeName: string;
}

/** Moves that a person plans; those of a closed stack or an archived board are not shown. */
export function plannedMoveReads(db: Db) {
  const select = `SELECT ${selected(columns, 'm')}, coalesce(s.name, b.code) AS name, p.name AS placeName
    FROM planned_move m JOIN place p ON p.id = m.place_id
    LEFT JOIN stack s ON s.id = m.stack_id LEFT JOIN board b ON b.id = m.board_id`;
  const one = db.prepare<[number], PlannedMoveRow>(`${select} WHERE m.id = ?`);
  const all = db.prepare<[], PlannedMoveRow>(
    `${select} WHERE s.closed_at IS NULL AND b.archived_at IS NULL ORDER BY m.planned_on, m.id`,
  );
  const ofBoard = db.prepare<[number], PlannedMoveRow>(`${select} WHERE m.board_id = ? ORDER BY m.id`);
  const plain = ({ name: _, placeName: __, ...move }: PlannedMoveRow): PlannedMove => move;
  return {
    get: (id: number): PlannedMove | undefined => {
      const row = one.get(id);
      return row && plain(row);
    },
    /** Of the board alone, and not of its stack. */
    ofBoard: (boardId: number): PlannedMove[] => ofBoard.all(boardId).map(plain),
    list: (): { move: PlannedMove; name: string; placeName: string }[] =>
      all.all().map((row) => ({ move: plain(row), name: row.name, placeName: row.placeName })),
  };
}

export function plannedMoveWrites(db: Db, { get }: ReturnType<typeof plannedMoveReads>) {
  const remove = db.prepare('DELETE FROM planned_move WHERE id = ? AND version = ?');
  return {
    add: recordAdder(db, 'planned_move', newColumns),
    edit: recordEditor(db, 'planned_move', newColumns, get),
    /** @returns whether it was at that version */
    remove: (id: number, basedOn: number): boolean => remove.run(id, basedOn).changes > 0,
  };
}
