import { type ComponentProps, type ReactNode, useDeferredValue, useMemo, useState } from 'react';
import type { LeftFilter } from '../../../shared-core/contract/archive.ts';
import { MOST_LABELS } from '../../../shared-core/contract/requests/labels.ts';
import type { BoardRow, BoardSort } from '../../../shared-core/contract/yard.ts';
import { TextField } from '../../form/Field.tsx';
import { rememberEdit, useLastEditIn } from '../../stores/last-edit.ts';
import { go, hrefOf } from '../../stores/navigation.ts';
import { Actions, Button, ButtonLink } from '../../ui/Button.tsx';
import { CallFilter, type Filter } from '../../ui/CallFilter.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { EmptyState, Failed, Loading } from '../../ui/Screen.tsx';
import type { Sort } from '../../ui/sorted-rows.ts';
import { useWords } from '../../words.ts';
import { ReserveForm } from '../dates/ReserveForm.tsx';
import { BringBackButton } from '../life/BringBackButton.tsx';
import { LifeMenu } from '../life/LifeMenu.tsx';
import { forBuyer } from '../reports/for-buyer.ts';
import { BoardsEdited } from './BoardsEdited.tsx';
import { boardColumns } from './board-columns.tsx';
import { EditBoardsForm } from './EditBoardsForm.tsx';
import { LeftFilterFields } from './LeftFilter.tsx';
import { MoveForm } from './MoveForm.tsx';
import css from './stack-screen.module.css';
import { useBoardPages } from './useBoardPages.ts';

const allLeft: LeftFilter = { became: null, year: null, soldTo: null };

/** The boards of a stack, or of the whole yard: to find, sort, select, label and edit. */
export function BoardList({
  stackId,
  counts,
  whenEmpty,
}: {
  stackId: number | null;
  /** How many boards each filter leaves. */
  counts: ComponentProps<typeof CallFilter>['counts'];
  whenEmpty: (showElsewhere: () => void) => ReactNode;
}) {
  const [search, setSearch] = useState('');
  const [filter, setFilter] = useState<Filter>('all');
  const [left, setLeft] = useState<LeftFilter>(allLeft);
  const [sort, setSort] = useState<Sort | null>(null);
  const isWhole = search.trim() === '' && filter === 'all';
  const pages = useBoardPages({
    stackId,
    search: useDeferredValue(search.trim()),
    filter: filter === 'all' ? null : filter,
    left,
    // The columns that sort are named as the machine names the orders.
    ...(sort && { sort: sort.id as BoardSort, descending: sort.descending }),
  });
  const [selected, setSelected] = useState<ReadonlyMap<number, BoardRow>>(new Map());
  const [asking, setAsking] = useState<'edit' | 'move' | 'reserve' | null>(null);
  const lastEdit = useLastEditIn(stackId);
  const words = useWords();
  const { say } = words;
  const { count } = pages;

  function select(boards: readonly BoardRow[], isSelected: boolean): void {
    const changed = new Map(selected);
    for (const board of boards) {
      if (isSelected) changed.set(board.id, board);
      else changed.delete(board.id);
    }
    setSelected(changed);
  }

  /** What was selected is edited from the version that was just saved, before the list comes with it. */
  function renew(versions: readonly Pick<BoardRow, 'id' | 'version'>[]): void {
    const changed = new Map(selected);
    for (const { id, version } of versions) {
      const board = changed.get(id);
      if (board) changed.set(id, { ...board, version });
    }
    setSelected(changed);
  }

  const showElsewhere = () => {
    setSearch('');
    setFilter('elsewhere');
  };
  const isMovedOutOfSight =
    lastEdit?.movedTo != null && (counts.elsewhere ?? 0) > 0 && filter !== 'elsewhere';
  const shown = new Map(pages.loaded.map((row) => [row.id, row]));
  /** As they are in sight now: they may have been edited elsewhere, or the edit undone. */
  const chosen = [...selected.values()]
    .map((board) => {
      const row = shown.get(board.id);
      return row && row.version > board.version ? row : board;
    })
    .sort((a, b) => a.id - b.id);
  const isOfArchived = filter === 'archived';
  const which = isOfArchived ? 'archived-boards' : stackId === null ? 'boards' : 'stack';
  // The same ones as long as they are, so that no row is drawn again for them.
  const columns = useMemo(() => boardColumns(words, which), [words, which]);
  const sheet = forBuyer(chosen, say);
  const selectNone = () => setSelected(new Map());

  /** What is out of sight is not brought back. */
  function narrow(next: LeftFilter): void {
    selectNone();
    setLeft(next);
  }

  /** What can be done with boards of the yard cannot be done with archived ones. */
  function show(next: Filter): void {
    if ((next === 'archived') !== isOfArchived) selectNone();
    setFilter(next);
  }

  return (
    <>
      <div className={css.tools}>
        <TextField
          label={say('stacks.search')}
          type="search"
          placeholder={say('stacks.search-example')}
          maxLength={80}
          value={search}
          onValue={setSearch}
        />
        <CallFilter value={filter} counts={counts} onValue={show} />
      </div>
      {filter === 'archived' && (
        <LeftFilterFields list={{ stackId, search: search.trim(), left }} onValue={narrow} />
      )}
      {lastEdit && (
        <BoardsEdited key={lastEdit.act} edit={lastEdit} onShow={isMovedOutOfSight ? showElsewhere : null} />
      )}
      {pages.error && <Failed sentence={pages.error} again={pages.again} />}
      {count === null && !pages.error && <Loading />}
      {count === 0 &&
        (isWhole ? (
          whenEmpty(showElsewhere)
        ) : (
          <EmptyState
            sentence={
              search.trim() === ''
                ? say('stacks.none-of-filter')
                : say('stacks.none-found', { searchText: search.trim() })
            }
          >
            <Button
              onClick={() => {
                setSearch('');
                setFilter('all');
              }}
            >
              {say('stacks.show-all')}
            </Button>
          </EmptyState>
        ))}
      {count !== null && count > 0 && (
        <DataTable
          name={say('stacks.boards-title')}
          columns={columns}
          columnsName={which}
          rows={{ ...pages, count }}
          keyOf={({ id }) => id}
          hrefOf={({ id }) => hrefOf({ name: 'board', id })}
          sort={{ sort, onSort: setSort }}
          fill
          selection={{
            isSelected: ({ id }) => selected.has(id),
            selected: selected.size,
            onSelect: select,
            nameOf: ({ code }) => code,
            summary:
              selected.size === 0
                ? say('stacks.boards', { boards: count })
                : say('stacks.selected-of', { selected: selected.size, boards: count }),
          }}
          actions={
            selected.size > 0 && (
              <Actions>
                <Button onClick={selectNone}>{say('stacks.select-none')}</Button>
                {isOfArchived ? (
                  <>
                    <BringBackButton boards={chosen} onBack={selectNone} />
                    <ButtonLink href={hrefOf(sheet.route)}>{sheet.words}</ButtonLink>
                  </>
                ) : (
                  <>
                    <Button onClick={() => setAsking('edit')}>{say('stacks.edit-selected')}</Button>
                    <Button onClick={() => setAsking('move')}>{say('stacks.move-selected')}</Button>
                    <Button onClick={() => setAsking('reserve')}>{say('reserve.action')}</Button>
                    <LifeMenu
                      boards={chosen}
                      items={[{ id: 'for-buyer', title: sheet.words, onPress: () => go(sheet.route) }]}
                      canDelete
                      onLeft={selectNone}
                      onDeleted={selectNone}
                    />
                    <ButtonLink
                      kind="main"
                      href={hrefOf({ name: 'labels', boardIds: [...selected.keys()].slice(0, MOST_LABELS) })}
                    >
                      {selected.size > MOST_LABELS
                        ? say('stacks.labels-of-first', { boards: MOST_LABELS })
                        : say('stacks.labels')}
                    </ButtonLink>
                  </>
                )}
              </Actions>
            )
          }
        />
      )}
      {asking === 'edit' && (
        <EditBoardsForm
          boards={chosen}
          onSaved={(output, movedTo) => {
            renew(output.boards);
            rememberEdit({ ...output, stackId, movedTo });
          }}
          onClose={() => setAsking(null)}
        />
      )}
      {asking === 'reserve' && (
        <ReserveForm boardIds={chosen.map(({ id }) => id)} projectId={null} onClose={() => setAsking(null)} />
      )}
      {asking === 'move' && (
        <MoveForm
          target={{
            boards: chosen,
            onMoved: (output, movedTo) => rememberEdit({ ...output, stackId, movedTo }),
          }}
          onClose={() => setAsking(null)}
        />
      )}
    </>
  );
}
