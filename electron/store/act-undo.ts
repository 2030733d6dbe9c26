import { type Change, changesOfAct } from './act-changes.ts';
import { actParts, type Found, type Row } from './act-parts.ts';
import { builtOn } from './built-on.ts';
import { isInTheWay, rowUndo } from './row-undo.ts';
import { undoneInTurn } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

/** What undoing or redoing an act changed, for whoever makes something of it. */
export interface Touched {
  /** Those of which anything changed, and rounds likewise. */
  boardIds: Set<number>;
  roundIds: Set<number>;
  /** Those that themselves changed; species also where their oven checks did, and places where their measured air did. */
  stackIds: Set<number>;
  placeIds: Set<number>;
  speciesIds: Set<string>;
  endUseIds: Set<string>;
  /** Whether something was weighed, dried, or read before it went into the oven: that teaches of the meters. */
  isTaught: boolean;
}

/** Why an act is not undone: a record of it is another now. Nothing was changed. */
export interface UndoConflict {
  /**
   * `changed`: it was edited, deleted or corrected since; `used`: something else refers to it; `taken`: another has its name;
   * `lost`: it is what another names that would come back, and was deleted since; `repeated`: its readings were saved again
   * since.
   */
  why: 'changed' | 'used' | 'taken' | 'lost' | 'repeated';
  /** The record, by its table and its name; null where it has none. */
  inTable: string;
  name: string | null;
  /** The id of the act that did that; null where it is not known. */
  by: string | null;
}

/** `known`: the act is undone, or done, as it was asked. */
export type Undoing = { done: true; touched: Touched } | { done: false; conflict: UndoConflict | 'known' };

/** So many changes are read at once; none of them is ever another later. */
const READ_AT_ONCE = 250;
const TEACHING = /^(oven_|sample_|own_fit_choice)/;

class InTheWay extends Error {
  override name = 'InTheWay';
  readonly conflict: UndoConflict;
  constructor(conflict: UndoConflict) {
    super(conflict.why);
    this.conflict = conflict;
  }
}

/** Of an act and those that undid and redid it: itself. */
const firstOf = (acts: string): number => Math.min(...(JSON.parse(acts) as number[]));

const parsed = (json: string): Row => JSON.parse(json) as Row;
const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A setting is a record of several: only those that the act changed are restored. Null where one was changed since. */
function settingBefore(now: string, before: string | null, after: string): string | null {
  const [is, was, became] = [now, before ?? '{}', after].map((text) => JSON.parse(text) as unknown);
  if (!isObject(is) || !isObject(was) || !isObject(became)) return null;
  const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
  const changed = [...new Set([...Object.keys(was), ...Object.keys(became)])].filter(
    (key) => !same(was[key], became[key]),
  );
  if (changed.some((key) => !same(is[key], became[key]))) return null;
  return JSON.stringify({ ...is, ...Object.fromEntries(changed.map((key) => [key, was[key]])) });
}

/**
 * Undoes an act by a further act, from what the file recorded of it (`change-triggers.ts`), and redoes it by undoing that
 * one. Rows that are never deleted are named in `undone_row`.
 */
export function actUndo(db: Db) {
  const parts = actParts(db);
  const rows = rowUndo(db);
  const built = builtOn(db);
  const idOf = db.prepare<[string], number>('SELECT id FROM act WHERE uuid = ?').pluck();
  const uuidOf = db.prepare<[number], string>('SELECT uuid FROM act WHERE id = ?').pluck();
  const requestOf = db.prepare<[number], string>('SELECT request FROM act WHERE id = ?').pluck();
  const chainOf = db
    .prepare<[number], number>(`${undoneInTurn('?')} SELECT id FROM chain ORDER BY n`)
    .pluck();
  const undoneOf = db
    .prepare<[number], number>('SELECT id FROM act WHERE undone_by = ? AND id <> undone_by')
    .pluck();
  const mark = db.prepare('UPDATE act SET undone_by = (SELECT act_id FROM act_now) WHERE id = ?');
  const appended = parts.appended.map((table) => ({
    table,
    count: db.prepare<[number], number>(`SELECT count(*) FROM ${table} WHERE act_id = ?`).pluck(),
    some: db.prepare<[number, number, number], Row>(
      `SELECT * FROM ${table} WHERE act_id = ? AND id > ? ORDER BY id LIMIT ?`,
    ),
  }));
  const changed = changesOfAct(db);
  const changedSince = db.prepare<
    { uuid: string; id: number; acts: string },
    { actId: number; before: string | null; after: string | null }
  >(
    `SELECT act_id AS actId, old_values AS before, new_values AS after FROM act_change
     WHERE row_uuid = @uuid AND id > @id AND act_id NOT IN (SELECT value FROM json_each(@acts)) ORDER BY id DESC`,
  );
  const lost = db
    .prepare<[string], string>(
      'SELECT old_values FROM act_change WHERE row_uuid = ? AND new_values IS NULL ORDER BY id DESC LIMIT 1',
    )
    .pluck();
  const voidRow = db.prepare('INSERT INTO undone_row (uuid, in_table) VALUES (?, ?)');
  const ownerOf = {
    reading_id: db.prepare<[unknown], Row>('SELECT board_id, round_id FROM reading WHERE id = ?'),
    cut_id: db.prepare<[unknown], Row>('SELECT board_id FROM sample_cut WHERE id = ?'),
    sample_cut_id: db.prepare<[unknown], Row>('SELECT board_id FROM sample_cut WHERE id = ?'),
    sample_weight_id: db.prepare<[unknown], Row>('SELECT board_id FROM sample_weight WHERE id = ?'),
    section_id: db.prepare<[unknown], Row>(
      'SELECT c.board_id FROM sample_section s JOIN sample_cut c ON c.id = s.cut_id WHERE s.id = ?',
    ),
    check_id: db.prepare<[unknown], Row>('SELECT species_id FROM oven_check WHERE id = ?'),
    oven_check_id: db.prepare<[unknown], Row>('SELECT species_id FROM oven_check WHERE id = ?'),
    test_block_id: db.prepare<[unknown], Row>('SELECT meter_id FROM test_block WHERE id = ?'),
    meter_check_id: db.prepare<[unknown], Row>(
      'SELECT b.meter_id FROM meter_check c JOIN test_block b ON b.id = c.test_block_id WHERE c.id = ?',
    ),
    oven_weight_id: db.prepare<[unknown], Row>(
      'SELECT c.species_id FROM oven_weight w JOIN oven_check c ON c.id = w.check_id WHERE w.id = ?',
    ),
  };
  const nameOf = {
    board: db.prepare<[unknown], string>('SELECT code FROM board WHERE id = ?').pluck(),
    stack: db.prepare<[unknown], string>('SELECT name FROM stack WHERE id = ?').pluck(),
    species: db.prepare<[unknown], string>('SELECT name FROM species WHERE id = ?').pluck(),
    meter: db.prepare<[unknown], string>('SELECT name FROM meter WHERE id = ?').pluck(),
  };
  const isOnlyMove = db
    .prepare<[unknown], number>('SELECT count(*) = 1 FROM move WHERE board_id = ?')
    .pluck();
  const wasAdded = db
    .prepare<{ acts: string; boardId: unknown }, number>(
      `SELECT EXISTS (SELECT 1 FROM act_change WHERE act_id IN (SELECT value FROM json_each(@acts))
       AND row_uuid = (SELECT uuid FROM board WHERE id = @boardId) AND old_values IS NULL)`,
    )
    .pluck();

  /** The row with what it is of, as a correction is of the board of its reading. */
  function withOwners(row: Row): Row {
    const owners: Row = { ...row };
    for (const [column, owner] of Object.entries(ownerOf)) {
      if (row[column] != null) Object.assign(owners, owner.get(row[column]));
    }
    return owners;
  }

  /** The boards that a reading was moved to since, from one to the next. */
  const movedOn = db
    .prepare<[unknown], number>(
      `WITH RECURSIVE moved (id) AS (SELECT ?
         UNION SELECT g.id FROM moved m JOIN amendment k ON k.reading_id = m.id AND k.field = 'excluded'
           JOIN reading g ON g.uuid = k.value ->> 'to')
       SELECT board_id FROM reading WHERE id IN (SELECT id FROM moved)`,
    )
    .pluck();

  function touch(touched: Touched, table: string, row: Row): void {
    if (row.reading_id != null) for (const id of movedOn.all(row.reading_id)) touched.boardIds.add(id);
    const { board_id, round_id, species_id } = withOwners(row);
    if (board_id != null) touched.boardIds.add(board_id as number);
    if (round_id != null) touched.roundIds.add(round_id as number);
    // Wood whose temperature nobody measured is as warm as the air at its place.
    if (table.startsWith('air_') && row.place_id != null) touched.placeIds.add(row.place_id as number);
    if (TEACHING.test(table)) {
      touched.isTaught = true;
      if (species_id != null) touched.speciesIds.add(species_id as string);
    }
    const own: Partial<Record<string, Set<unknown>>> = {
      board: touched.boardIds,
      round: touched.roundIds,
      stack: touched.stackIds,
      place: touched.placeIds,
      species: touched.speciesIds,
      end_use: touched.endUseIds,
    };
    if (row.id != null) own[table]?.add(row.id);
  }

  /** By what a person knows the record: its own name, or that of what it is of. */
  function shownName(row: Row): string | null {
    const own = row.code ?? row.name ?? row.piece;
    if (typeof own === 'string') return own;
    const owners = withOwners(row);
    if (owners.board_id != null) return nameOf.board.get(owners.board_id) ?? null;
    if (owners.meter_id != null) return nameOf.meter.get(owners.meter_id) ?? null;
    if (owners.stack_id != null) return nameOf.stack.get(owners.stack_id) ?? null;
    return owners.species_id == null ? null : (nameOf.species.get(owners.species_id) ?? null);
  }

  function refuse(why: UndoConflict['why'], table: string, row: Row, actId: number | null): never {
    const by = actId === null ? null : (uuidOf.get(actId) ?? null);
    throw new InTheWay({ why, inTable: table, name: shownName(row), by });
  }
  function refuseWhere(why: UndoConflict['why'], table: string, row: Row, found: Found | undefined): void {
    if (found) refuse(why, table, row, found.actId);
  }

  /** The newest act since that changed one of these fields of a row, or added or deleted it. */
  function since({ uuid, id }: Change, fields: readonly string[], acts: string): number | null {
    const found = changedSince.all({ uuid, id, acts }).find(({ before, after }) => {
      if (before === null || after === null) return true;
      const changed = parsed(after);
      return fields.some((field) => field in changed);
    });
    return found?.actId ?? null;
  }

  /** What was cut since has what the change made of the board: where it stood, in which stack, and with which readings. */
  function checkNotCut(change: Change, row: Row, acts: string): void {
    const { inTable: table } = change;
    const isNewOrGone = change.before === null || change.after === null;
    const changes = (column: string) => isNewOrGone || column in parsed(change.after as string);
    let boardId: unknown;
    if (table === 'board' && !isNewOrGone && changes('stack_id')) boardId = row.id;
    if (table === 'move' && changes('place_id')) boardId = row.board_id;
    if (table === 'board_origin' && row.how === 'merged') boardId = row.child_id;
    const cut = boardId === undefined ? undefined : built.cutSince(boardId, change, acts);
    if (cut) refuse('used', 'board', { board_id: cut.boardId }, cut.actId);
  }

  /** Pieces come back to where they were cut: not where the board was put elsewhere meanwhile. */
  function checkPieceStands(change: Change, row: Row, acts: string): void {
    const { child_id, parent_id, how } = row;
    if (change.inTable !== 'board_origin' || how === 'merged' || !built.differs(child_id, parent_id)) return;
    // Pieces of an older cut, or of another file, may have stood elsewhere from the start.
    const by = built.putElsewhereSince(parent_id, change, acts);
    if (by !== null) refuse('changed', 'board', { board_id: parent_id ?? null }, by);
  }

  /** What was typed or imported again after it was undone would be there twice. */
  function checkNotReadAgain(chain: readonly number[]): void {
    const again = built.readAgainSince(chain[0] as number, chain.at(-1) as number);
    if (again) refuse('repeated', 'board', { board_id: again.boardId }, again.actId);
  }

  /** Where places were merged, a later move may be gone because the board was there by this one. */
  function checkNotRepeated(change: Change, row: Row, acts: string): void {
    if (change.inTable !== 'move') return;
    const stands = ({ actId }: Found) => actId !== null && chainOf.all(rootOf(actId)).length % 2 === 1;
    refuseWhere('used', 'move', row, built.repeatedSince(row, change, acts).find(stands));
  }

  /** Which moves count for a board that was entered twice follows from those of both records. */
  function checkMovesOfMerged(tip: number, acts: string): void {
    const found = built.mergedMovesLostSince(tip, changed.span(tip).last, acts);
    if (found) refuse('changed', 'board', { board_id: found.boardId }, found.actId);
  }

  /** Where places are merged again, a move to where the board was already goes: not where it came from elsewhere by now. */
  function checkStillRepeated(change: Change, row: Row, acts: string): void {
    if (change.inTable !== 'move' || requestOf.get(firstOf(acts)) !== 'places.merge') return;
    if (!built.isThereBefore(row))
      refuse('changed', 'move', row, built.putElsewhereSince(row.board_id, change, acts));
  }

  /** A row that is never deleted is to hold no longer. @param firstAct  what was there before this act is not in the way */
  function checkAppended(table: string, row: Row, acts: string, firstAct = 0): void {
    const isLater = (found: Found | undefined) => (found?.actId ?? 0) >= firstAct;
    const later = parts.laterThan(table, row, acts);
    if (isLater(later)) refuseWhere('changed', table, row, later);
    const user = parts.userOf(table, row.id, acts);
    if (isLater(user)) refuseWhere(user?.table === 'amendment' ? 'changed' : 'used', table, row, user);
  }

  const boardUndone = db.prepare<{ boardId: unknown; acts: string }, Found>(
    `SELECT b.uuid, h.act_id AS actId FROM board b JOIN act_change h ON h.id =
       (SELECT max(c.id) FROM act_change c WHERE c.row_uuid = b.uuid AND c.new_values ->> '$.archived_why' IS NOT NULL)
     WHERE b.id = @boardId AND b.archived_why ->> 'code' = 'undone' AND h.act_id NOT IN (SELECT value FROM json_each(@acts))`,
  );

  /** A row that is never deleted holds again: unless another has held in its place since, or what it is of was undone. */
  function checkHoldsAgain(table: string, row: Row, acts: string, firstAct: number): void {
    const later = parts.laterThan(table, row, acts);
    if ((later?.actId ?? 0) >= firstAct) refuseWhere('changed', table, row, later);
    refuseWhere('changed', table, row, parts.undoneOf(table, row, acts));
    const { board_id: boardId = null } = withOwners(row);
    refuseWhere('lost', 'board', { board_id: boardId }, boardUndone.get({ boardId, acts }));
  }

  /** The fields that the act changed of a row are as it left them. */
  function checkUnchanged(change: Change, row: Row, after: Row, acts: string): void {
    const fields = Object.keys(after).filter((name) => name !== 'version' && row[name] !== after[name]);
    if (fields.length > 0) refuse('changed', change.inTable, row, since(change, fields, acts));
  }

  function restoreAdded(change: Change, acts: string, at: string, touched: Touched): void {
    const { inTable: table, uuid } = change;
    const after = parsed(change.after as string);
    const row = rows.find(table, uuid);
    // A board's first move goes with the board.
    if (row === undefined && table === 'move' && nameOf.board.get(after.board_id) === undefined) return;
    if (row === undefined) refuse('changed', table, after, since(change, [], acts));
    touch(touched, table, row);
    if (table === 'undone_row') {
      const inTable = row.in_table as string;
      const held = rows.find(inTable, uuid) as Row;
      checkHoldsAgain(inTable, held, acts, firstOf(acts));
      touch(touched, inTable, held);
      rows.remove(table, row, at);
      return;
    }
    if (table === 'setting' && row.value !== after.value) {
      const value = settingBefore(row.value as string, null, after.value as string);
      if (value === null) refuse('changed', table, row, since(change, ['value'], acts));
      rows.edit(table, uuid, { value });
      return;
    }
    checkUnchanged(change, row, after, acts);
    checkStillRepeated(change, row, acts);
    if (table === 'move' && isOnlyMove.get(row.board_id) === 1) {
      if (wasAdded.get({ acts, boardId: row.board_id }) === 1) return;
      // Those before it were deleted since.
      refuse('changed', table, row, null);
    }
    checkNotCut(change, row, acts);
    checkNotRepeated(change, row, acts);
    refuseWhere('used', table, row, parts.userOf(table, row.id, acts));
    rows.remove(table, row, at);
  }

  function restoreEdited(change: Change, acts: string, touched: Touched): void {
    const { inTable: table, uuid } = change;
    const { version: _, ...after } = parsed(change.after as string);
    const { version: __, ...before } = parsed(change.before as string);
    const row = rows.find(table, uuid);
    if (row === undefined) refuse('changed', table, parsed(lost.get(uuid) ?? '{}'), since(change, [], acts));
    touch(touched, table, row);
    touch(touched, table, before);
    if (table === 'setting' && typeof before.value === 'string' && typeof after.value === 'string') {
      const value = settingBefore(row.value as string, before.value, after.value);
      if (value !== null) {
        rows.edit(table, uuid, { value });
        return;
      }
    }
    checkUnchanged(change, row, after, acts);
    checkNotCut(change, row, acts);
    checkNotRepeated(change, row, acts);
    rows.edit(table, uuid, before);
  }

  function restoreDeleted(change: Change, acts: string, touched: Touched): void {
    const { inTable: table, uuid } = change;
    const before = parsed(change.before as string);
    if (rows.find(table, uuid)) refuse('changed', table, before, since(change, [], acts));
    checkNotCut(change, before, acts);
    rows.insert(table, before);
    checkPieceStands(change, before, acts);
    touch(touched, table, before);
    if (table !== 'undone_row') return;
    const inTable = before.in_table as string;
    const held = rows.find(inTable, uuid) as Row;
    checkAppended(inTable, held, acts, firstOf(acts));
    touch(touched, inTable, held);
  }

  function restore(change: Change, acts: string, at: string, touched: Touched): void {
    try {
      if (change.before === null) restoreAdded(change, acts, at, touched);
      else if (change.after === null) restoreDeleted(change, acts, touched);
      else restoreEdited(change, acts, touched);
    } catch (error) {
      if (!isInTheWay(error)) throw error;
      const lost = change.before === null ? undefined : parts.lostOf(change.inTable, parsed(change.before));
      if (lost) refuse('lost', lost.table, parsed(lost.before), lost.actId);
      const row = { ...parsed(change.after ?? '{}'), ...parsed(change.before ?? '{}') };
      refuse('taken', change.inTable, rows.find(change.inTable, change.uuid) ?? row, null);
    }
  }

  /** All of an act, the newest change first, one after the other. */
  function* restoreAll(
    tip: number,
    chain: readonly number[],
    at: string,
    touched: Touched,
    isOver: () => boolean,
  ): Generator<{ done: number; total: number }, void, void> {
    const acts = JSON.stringify(chain);
    const { first, last, count } = changed.span(tip);
    const total = appended.reduce((sum, each) => sum + (each.count.get(tip) ?? 0), count);
    let done = 0;
    for (const { table, some } of appended) {
      let held = some.all(tip, 0, READ_AT_ONCE);
      while (held.length > 0) {
        for (const row of held) {
          // What the meter said of itself at its next connection goes with how it was set up.
          for (const seen of table === 'meter_profile' ? built.seenSince(row) : []) {
            refuseWhere('used', table, seen, parts.userOf(table, seen.id, acts));
            voidRow.run(seen.uuid, table);
          }
          checkAppended(table, row, acts);
          voidRow.run(row.uuid, table);
          touch(touched, table, row);
          if (++done < total && isOver()) yield { done, total };
        }
        held = some.all(tip, held.at(-1)!.id as number, READ_AT_ONCE);
      }
    }
    let found = changed.some(tip, first, last, READ_AT_ONCE);
    while (found.length > 0) {
      for (const change of found) {
        restore(change, acts, at, touched);
        if (++done < total && isOver()) yield { done, total };
      }
      found = changed.some(tip, first, found.at(-1)!.id - 1, READ_AT_ONCE);
    }
  }

  /** The act that an undoing or redoing act is about, else itself. */
  function rootOf(id: number): number {
    let root = id;
    for (let before = undoneOf.get(root); before !== undefined; before = undoneOf.get(root)) root = before;
    return root;
  }

  return {
    /** The act that this one undid or redid; itself where it did neither. */
    rootOf: (id: string): string | undefined => {
      const own = idOf.get(id);
      return own === undefined ? undefined : uuidOf.get(rootOf(own));
    },
    /** Whether an act is undone as it is now. */
    isUndone: (id: string): boolean => chainOf.all(rootOf(idOf.get(id) ?? 0)).length % 2 === 0,
    /**
     * Undoes an act, or redoes it. It yields how many changes are done wherever the slice is over.
     * Run it within another act, and take back what it wrote where it answers that it was not done.
     * @param id  any of those that did, undid and redid it
     */
    *undo(
      id: string,
      at: string,
      what: 'undo' | 'redo',
      isOver: () => boolean,
    ): Generator<{ done: number; total: number }, Undoing, void> {
      const own = idOf.get(id);
      const chain = own === undefined ? [] : chainOf.all(rootOf(own));
      const isUndone = chain.length % 2 === 0;
      if (isUndone !== (what === 'redo')) return { done: false, conflict: 'known' };
      const tip = chain.at(-1) as number;
      const touched: Touched = {
        boardIds: new Set(),
        stackIds: new Set(),
        placeIds: new Set(),
        roundIds: new Set(),
        speciesIds: new Set(),
        endUseIds: new Set(),
        isTaught: false,
      };
      mark.run(tip);
      try {
        if (what === 'redo') {
          checkNotReadAgain(chain);
          checkMovesOfMerged(tip, JSON.stringify(chain));
        }
        yield* restoreAll(tip, chain, at, touched, isOver);
      } catch (error) {
        if (error instanceof InTheWay) return { done: false, conflict: error.conflict };
        throw error;
      }
      return { done: true, touched };
    },
  };
}
