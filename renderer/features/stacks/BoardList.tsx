import { useDeferredValue, useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { TextField } from '../../form/Field.tsx';
import { fetchBoards } from '../../stores/boards.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { attempt } from '../../stores/notices.ts';
import { Actions, Button, ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Failed, Loading } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { MOST_LABELS } from '../labels/label-choice.ts';
import { BoardRows } from './BoardRows.tsx';
import { EditBoardsForm } from './EditBoardsForm.tsx';
import { MoveForm } from './MoveForm.tsx';
import { useBoardPages } from './useBoardPages.ts';

/** As many boards as can be moved at once. */
const MOST_SELECTED = 100_000;

/** The boards of a stack, or of the whole yard: to search, select, label, edit and move. */
export function BoardList({ stackId, whenEmpty }: { stackId: number | null; whenEmpty: React.ReactNode }) {
  const [search, setSearch] = useState('');
  const pages = useBoardPages(stackId, useDeferredValue(search.trim()));
  const [selected, setSelected] = useState<ReadonlyMap<number, BoardRow>>(new Map());
  const [selecting, setSelecting] = useState(false);
  const [open, setOpen] = useState<'nothing' | 'move' | 'edit'>('nothing');
  const { say } = useWords();
  const { total } = pages;

  function select(board: BoardRow, isSelected: boolean): void {
    const changed = new Map(selected);
    if (isSelected) changed.set(board.id, board);
    else changed.delete(board.id);
    setSelected(changed);
  }

  async function selectAll(): Promise<void> {
    setSelecting(true);
    const all = await attempt(fetchBoards(stackId, search.trim(), MOST_SELECTED));
    setSelecting(false);
    if (all) setSelected(new Map(all.rows.map((board) => [board.id, board])));
  }

  /** What was selected is edited from its new version the next time. */
  function renew(versions: readonly Pick<BoardRow, 'id' | 'version'>[]): void {
    const changed = new Map(selected);
    for (const { id, version } of versions) {
      const board = changed.get(id);
      if (board) changed.set(id, { ...board, version });
    }
    setSelected(changed);
  }

  return (
    <>
      <div className="board-list-head">
        <TextField
          label={say('stacks.search')}
          type="search"
          placeholder={say('stacks.search-example')}
          maxLength={80}
          value={search}
          onValue={setSearch}
        />
        {total !== null && total > 0 && (
          <SelectedBar
            total={total}
            selected={[...selected.keys()]}
            selecting={selecting}
            onAll={selectAll}
            onNone={() => setSelected(new Map())}
            onEdit={() => setOpen('edit')}
            onMove={() => setOpen('move')}
          />
        )}
      </div>
      {pages.error && <Failed sentence={pages.error} again={pages.again} />}
      {total === null && !pages.error && <Loading />}
      {total === 0 &&
        (search.trim() === '' ? (
          whenEmpty
        ) : (
          <EmptyState sentence={say('stacks.none-found', { searchText: search.trim() })}>
            <Button onClick={() => setSearch('')}>{say('stacks.show-all')}</Button>
          </EmptyState>
        ))}
      {total !== null && total > 0 && (
        <BoardRows
          pages={pages}
          total={total}
          showStack={stackId === null}
          selected={selected}
          onSelected={select}
        />
      )}
      {open === 'edit' && (
        <EditBoardsForm
          boards={[...selected.values()].sort((a, b) => a.id - b.id)}
          onSaved={renew}
          onClose={() => setOpen('nothing')}
        />
      )}
      {open === 'move' && (
        <MoveForm target={{ boardIds: [...selected.keys()] }} onClose={() => setOpen('nothing')} />
      )}
    </>
  );
}

/** How many boards there are and are selected, and what can be done with the selected ones. */
function SelectedBar({
  total,
  selected,
  selecting,
  onAll,
  onNone,
  onEdit,
  onMove,
}: {
  total: number;
  selected: readonly number[];
  /** While all of them are being fetched. */
  selecting: boolean;
  onAll: () => void;
  onNone: () => void;
  onEdit: () => void;
  onMove: () => void;
}) {
  const { say } = useWords();
  const count = selected.length;
  return (
    <div className="selected-bar">
      <p role="status">
        {count === 0
          ? say('stacks.boards', { boards: total })
          : say('stacks.selected-of', { selected: count, boards: total })}
      </p>
      <Actions>
        {count < total && (
          <Button disabled={selecting} onClick={onAll}>
            {say(selecting ? 'stacks.selecting' : 'stacks.select-all')}
          </Button>
        )}
        {count > 0 && (
          <>
            <Button onClick={onNone}>{say('stacks.select-none')}</Button>
            <Button onClick={onEdit}>{say('stacks.edit-selected')}</Button>
            <Button onClick={onMove}>{say('stacks.move-selected')}</Button>
            <ButtonLink
              kind="main"
              href={hrefOf({ name: 'labels', boardIds: selected.slice(0, MOST_LABELS) })}
            >
              {count > MOST_LABELS
                ? say('stacks.labels-of-first', { boards: MOST_LABELS })
                : say('stacks.labels')}
            </ButtonLink>
          </>
        )}
      </Actions>
    </div>
  );
}
