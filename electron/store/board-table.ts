import {
  type Board,
  type BoardRow,
  boardSchema,
  latestFindingSchema,
  type NewBoard,
} from '../../shared-core/contract/yard.ts';
import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import { moveWrites } from './move-table.ts';
import type { Db } from './yard-file.ts';

const columns: Columns<NewBoard> = {
  code: 'code',
  stackId: 'stack_id',
  speciesId: 'species_id',
  thicknessMm: 'thickness_mm',
  thicknessQuarters: 'thickness_quarters',
  widthMm: 'width_mm',
  lengthMm: 'length_mm',
  sawnOn: 'sawn_on',
  sawing: 'sawing',
  ringRadiusMm: 'ring_radius_mm',
  barkSide: 'bark_side',
  barkOffOn: 'bark_off_on',
  log: 'log',
  layer: 'layer',
  column: 'stack_column',
  note: 'note',
};
const recordColumns: Columns<Board & { version: number }> = { id: 'id', version: 'version', ...columns };

interface BoardRecord extends Omit<BoardRow, 'latest'> {
  finding: string | null;
}

/** What a board's volume and weight are made from; `averagePct` null where it was never soundly probed. */
interface BoardSizes extends Pick<Board, 'speciesId' | 'thicknessMm' | 'widthMm' | 'lengthMm'> {
  averagePct: number | null;
}

/** What a round shows of a board before it is read. */
export interface BoardToProbe
  extends Pick<Board, 'id' | 'code' | 'thicknessMm' | 'thicknessQuarters' | 'lengthMm'> {
  speciesName: string;
}

interface JudgedBy<Flag>
  extends Pick<Board, 'code' | 'speciesId' | 'thicknessMm' | 'thicknessQuarters' | 'lengthMm'> {
  endUseId: string;
  /** Whether a person looked and says that it is of this species. */
  isSpeciesConfirmed: Flag;
}

const select = `
  SELECT ${selected(recordColumns, 'b')}, s.name AS stackName, w.record ->> 'name' AS speciesName,
    m.place_id AS placeId, p.name AS placeName, m.since AS placeSince, f.record AS finding
  FROM board b
  JOIN stack s ON s.id = b.stack_id
  JOIN species w ON w.id = b.species_id
  JOIN move m ON m.id = (SELECT id FROM move WHERE board_id = b.id ORDER BY since DESC, id DESC LIMIT 1)
  JOIN place p ON p.id = m.place_id
  LEFT JOIN finding f ON f.board_id = b.id AND f.round_id = b.latest_round_id`;

const toRow = ({ finding, ...row }: BoardRecord): BoardRow => ({
  ...boardSchema.parse(row),
  version: row.version,
  stackName: row.stackName,
  speciesName: row.speciesName,
  placeId: row.placeId,
  placeName: row.placeName,
  placeSince: row.placeSince,
  latest: finding === null ? null : (latestFindingSchema.safeParse(JSON.parse(finding)).data ?? null),
});

/** Boards; archived ones only by their id. */
export function boardReads(db: Db) {
  const one = db.prepare<[number], BoardRecord>(`${select} WHERE b.id = ?`);
  /** Each its own statement, so that each finds its index. */
  const list = (stack: string, search: string) => {
    const filter = `WHERE b.archived_at IS NULL ${stack} ${search}`;
    return {
      // The page's ids first: the joins are then made for its boards only, however far down it lies.
      page: db.prepare<[object], BoardRecord>(
        `${select} WHERE b.id IN (SELECT b.id FROM board b ${filter} ORDER BY b.id LIMIT @limit OFFSET @offset)
         ORDER BY b.id`,
      ),
      count: db.prepare<[object], { n: number }>(`SELECT count(*) AS n FROM board b ${filter}`),
    };
  };
  const inOneStack = 'AND b.stack_id = @stackId';
  const found = `AND (b.code LIKE @like ESCAPE '\\' OR b.log LIKE @like ESCAPE '\\'
    OR b.species_id IN (SELECT id FROM species WHERE record ->> 'name' LIKE @like ESCAPE '\\'))`;
  const lists = {
    all: list('', ''),
    stack: list(inOneStack, ''),
    search: list('', found),
    searchInStack: list(inOneStack, found),
  };
  const inStack = 'b.stack_id = ? AND b.archived_at IS NULL';
  const idsOf = db.prepare<[number], { id: number }>(
    `SELECT b.id FROM board b WHERE ${inStack} ORDER BY b.id`,
  );
  const toProbe = `SELECT b.id, b.code, b.thickness_mm AS thicknessMm, b.thickness_quarters AS thicknessQuarters,
    b.length_mm AS lengthMm, w.record ->> 'name' AS speciesName FROM board b JOIN species w ON w.id = b.species_id`;
  const withStack = db.prepare<[number], BoardToProbe>(
    `${toProbe} WHERE ${inStack} AND (SELECT place_id FROM stack WHERE id = b.stack_id) =
       (SELECT place_id FROM move WHERE board_id = b.id ORDER BY since DESC, id DESC LIMIT 1) ORDER BY b.id`,
  );
  const readInRound = db.prepare<[number], BoardToProbe>(
    `${toProbe} WHERE b.id IN (SELECT board_id FROM reading WHERE round_id = ?) ORDER BY b.id`,
  );
  const codesOf = db.prepare<[number], { code: string }>(
    `SELECT b.code FROM board b WHERE ${inStack} ORDER BY b.id DESC`,
  );
  const byCode = db.prepare<[string], { id: number }>(
    'SELECT id FROM board WHERE code = ? AND archived_at IS NULL',
  );
  const total = db.prepare<[], { n: number }>('SELECT count(*) AS n FROM board WHERE archived_at IS NULL');
  const sizes = db.prepare<[number], BoardSizes>(
    `SELECT b.species_id AS speciesId, b.thickness_mm AS thicknessMm, b.width_mm AS widthMm, b.length_mm AS lengthMm,
       f.record ->> 'averagePct' AS averagePct
     FROM board b LEFT JOIN finding f ON f.board_id = b.id AND f.round_id = b.latest_round_id
     WHERE ${inStack}`,
  );
  const topLayer = db.prepare<[number], { layer: number | null }>(
    `SELECT max(b.layer) AS layer FROM board b WHERE ${inStack}`,
  );
  const idsOfSpecies = db.prepare<[string], { id: number }>('SELECT id FROM board WHERE species_id = ?');
  const idsForEndUse = db.prepare<[string], { id: number }>(
    'SELECT b.id FROM board b JOIN stack s ON s.id = b.stack_id WHERE s.end_use_id = ?',
  );
  const judgedBy = db.prepare<[number], JudgedBy<number>>(
    `SELECT b.code, b.species_id AS speciesId, s.end_use_id AS endUseId, b.thickness_mm AS thicknessMm,
       b.thickness_quarters AS thicknessQuarters, b.length_mm AS lengthMm, c.board_id IS NOT NULL AS isSpeciesConfirmed
     FROM board b JOIN stack s ON s.id = b.stack_id
     LEFT JOIN confirmed_species c ON c.board_id = b.id AND c.species_id = b.species_id WHERE b.id = ?`,
  );

  const ids = (rows: { id: number }[]): number[] => rows.map((row) => row.id);

  return {
    get: (id: number): BoardRow | undefined => {
      const row = one.get(id);
      return row && toRow(row);
    },
    page: (wanted: { stackId: number | null; search: string; offset: number; limit: number }) => {
      const { stackId, offset, limit } = wanted;
      const search = wanted.search.trim();
      const parameters = { stackId, like: `%${search.replace(/[\\%_]/g, '\\$&')}%`, limit, offset };
      const { count, page } =
        search === ''
          ? lists[stackId === null ? 'all' : 'stack']
          : lists[stackId === null ? 'search' : 'searchInStack'];
      return { total: count.get(parameters)?.n ?? 0, rows: page.all(parameters).map(toRow) };
    },
    total: (): number => total.get()?.n ?? 0,
    sizesOfStack: (stackId: number): BoardSizes[] => sizes.all(stackId),
    /** Those that are where their stack is, in the order of their ids, as they are walked. */
    toProbe: (stackId: number): BoardToProbe[] => withStack.all(stackId),
    /** Wherever they are now. */
    readInRound: (roundId: number): BoardToProbe[] => readInRound.all(roundId),
    idsOfStack: (stackId: number): number[] => ids(idsOf.all(stackId)),
    idsOfSpecies: (speciesId: string): number[] => ids(idsOfSpecies.all(speciesId)),
    idsForEndUse: (endUseId: string): number[] => ids(idsForEndUse.all(endUseId)),
    /** Codes of a stack's boards, the newest board first. */
    codesOfStack: (stackId: number): string[] => codesOf.all(stackId).map((row) => row.code),
    idByCode: (code: string): number | undefined => byCode.get(code)?.id,
    topLayer: (stackId: number): number | null => topLayer.get(stackId)?.layer ?? null,
    /** The little of a board that judging it rests on; asked for a thousand boards at a time. */
    judgedBy: (boardId: number): JudgedBy<boolean> | undefined => {
      const row = judgedBy.get(boardId);
      return row && { ...row, isSpeciesConfirmed: row.isSpeciesConfirmed === 1 };
    },
  };
}

export function boardWrites(db: Db, { get }: ReturnType<typeof boardReads>) {
  const add = recordAdder(db, 'board', columns);
  const moves = moveWrites(db);
  return {
    /** A board, and that it stands at a place since an instant. */
    add: (board: NewBoard, placeId: number, since: string): number => {
      const boardId = add(board);
      moves.add({ boardId, placeId, since });
      return boardId;
    },
    edit: recordEditor(db, 'board', columns, get),
  };
}
