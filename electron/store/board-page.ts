import type { LeftFilter } from '../../shared-core/contract/archive.ts';
import type { BoardFilter, BoardSort } from '../../shared-core/contract/yard.ts';
import { CALL_RANK } from './migrations/0017-too-dry.ts';
import { valueIn } from './read-json.ts';

/** Which page of which boards, and in which order. */
export interface BoardPage {
  stackId: number | null;
  search: string;
  filter?: BoardFilter | null;
  /** Of those that left the yard, where the filter shows these. */
  left?: LeftFilter;
  sort?: BoardSort;
  descending?: boolean;
  offset: number;
  limit: number;
}

interface Order {
  by: (direction: 'ASC' | 'DESC') => string;
  /** Where those of the whole yard come in that order. SQLite would rather sort 100,000 boards than use the index. */
  ofYard: string;
}

const byColumn = (column: string, index: string): Order => ({
  by: (direction) => `ORDER BY ${column} ${direction} NULLS LAST, b.id ${direction}`,
  ofYard: `FROM board b INDEXED BY ${index}`,
});

/** How boards are sorted. `b` is `board`, `w` is `species`. */
const orders: Record<BoardSort, Order> = {
  added: { by: (direction) => `ORDER BY b.id ${direction}`, ofYard: 'FROM board b' },
  code: byColumn('b.code', 'board_by_code'),
  average: byColumn('b.latest_average_pct', 'board_by_average'),
  call: byColumn(CALL_RANK, 'board_by_call'),
  ready: byColumn('b.ready_on', 'board_by_ready'),
  read: byColumn('b.latest_at', 'board_by_reading'),
  species: {
    by: (direction) => `ORDER BY w.name ${direction}, w.id ${direction}, b.id ${direction}`,
    ofYard: 'FROM species w CROSS JOIN board b INDEXED BY board_by_species ON b.species_id = w.id',
  },
};

/** Where all of a search's boards come from. */
const BY_TEXT = 'FROM board b INDEXED BY board_by_text';

/** Where boards are counted that are on any page. */
export const countedFrom = ({ stackId, search, filter = null }: BoardPage): string =>
  search !== '' && stackId === null && filter === null ? BY_TEXT : 'FROM board b';

/** The order of a page's boards, and where they come from in that order. */
export function orderOf({ stackId, search, filter, sort = 'added', descending }: BoardPage): {
  order: string;
  from: string;
} {
  const { by, ofYard } = orders[sort];
  // The indexes of the whole yard leave these out.
  if (filter === 'archived')
    return {
      // Those that left last come first.
      order: sort === 'added' ? 'ORDER BY b.archived_at DESC, b.id DESC' : by(descending ? 'DESC' : 'ASC'),
      from: 'FROM board b INDEXED BY board_by_archived JOIN species w ON w.id = b.species_id',
    };
  const ofWholeYard = search !== '' && sort === 'added' ? BY_TEXT : ofYard;
  return {
    order: by(descending ? 'DESC' : 'ASC'),
    from:
      stackId === null
        ? ofWholeYard
        : 'FROM board b INDEXED BY board_by_stack JOIN species w ON w.id = b.species_id',
  };
}

const ELSEWHERE = `AND b.id IN (SELECT e.id FROM stack s CROSS JOIN board e INDEXED BY board_by_standing
  ON e.stack_id = s.id AND e.archived_at IS NULL AND e.place_id <> s.place_id)`;
/** Of boards that are where their stack is. */
export const WITH_STACK = 'AND b.place_id = (SELECT place_id FROM stack WHERE id = b.stack_id)';
/** A person may know a species by any of its names, also in another language. */
const ALIASES = `json_extract(record, '$.aliases')`;
const FOUND = `AND (b.code LIKE @like ESCAPE '\\' OR (b.log <> '' AND b.log LIKE @like ESCAPE '\\')
  OR (b.note <> '' AND b.note LIKE @like ESCAPE '\\')
  OR b.species_id IN (SELECT id FROM species WHERE name LIKE @like ESCAPE '\\'
    OR CASE WHEN json_valid(record) THEN ${ALIASES} LIKE @like ESCAPE '\\' END))`;

/** SQL for the code of why a board `b` left the lists; blank where it did not, or nobody knows. */
export const WHY_LEFT = `coalesce(${valueIn('b.archived_why', '$.code')}, '')`;
/** SQL for whether it was cut into others. */
export const IS_CUT = `${WHY_LEFT} IN ('ripped', 'crosscut')`;
/** What was entered by mistake, or undone, is in no list. */
export const SHOWN_ARCHIVED = `AND ${WHY_LEFT} NOT IN ('deleted', 'undone')`;

/** SQL for to whom a board was sold, what it was used for, or why it was scrapped. */
export const LEFT_NOTE = `coalesce(${valueIn('b.archived_why', '$.note')}, '')`;

const allLeft: LeftFilter = { became: null, year: null, soldTo: null };
/** Its year lies from @leftFrom to before @leftBefore; @soldTo has all spellings of the buyer. */
const leftBy = ({ became, year, soldTo }: LeftFilter = allLeft): string[] => [
  ...(became === null ? [] : [`AND ${became === 'cut' ? IS_CUT : `${WHY_LEFT} = '${became}'`}`]),
  ...(year === null ? [] : ['AND b.archived_at >= @leftFrom AND b.archived_at < @leftBefore']),
  ...(soldTo === null
    ? []
    : [`AND ${WHY_LEFT} = 'sold' AND ${LEFT_NOTE} IN (SELECT value FROM json_each(@soldTo))`]),
];

/** Their number is that of the call in CALL_RANK; boards without one have the next. */
const CALLS = ['ready', 'bring-in', 'keep-drying', 'too-dry', 'probe-again', 'not-probed'];

/** Which boards those are, over all pages. */
export function conditionOf({ stackId, search, filter = null, left }: BoardPage): string {
  const inStack = stackId === null ? [] : ['AND b.stack_id = @stackId'];
  const found = search === '' ? [] : [FOUND];
  if (filter === 'archived')
    return ['WHERE b.archived_at IS NOT NULL', SHOWN_ARCHIVED, ...leftBy(left), ...inStack, ...found].join(
      ' ',
    );
  return [
    'WHERE b.archived_at IS NULL',
    ...inStack,
    ...(filter === 'elsewhere' ? [ELSEWHERE] : stackId === null ? [] : [WITH_STACK]),
    ...(filter === null || filter === 'elsewhere' ? [] : [`AND ${CALL_RANK} = ${CALLS.indexOf(filter)}`]),
    ...found,
  ].join(' ');
}
