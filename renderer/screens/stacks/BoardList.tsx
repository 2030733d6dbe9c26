import { useDeferredValue, useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { Actions, Button, ButtonLink } from '../../parts/Button.tsx';
import { TextField } from '../../parts/Field.tsx';
import { EmptyState, Failed, Loading } from '../../parts/Screen.tsx';
import { fetchBoards } from '../../stores/boards.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { attempt } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { MOST_LABELS } from '../labels/label-choice.ts';
import { BoardRows } from './BoardRows.tsx';
import { ChangeTogetherForm } from './ChangeTogetherForm.tsx';
import { MoveForm } from './MoveForm.tsx';
import { useBoardPages } from './useBoardPages.ts';

/** As many boards as can be moved at once. */
const MOST_CHOSEN = 100_000;

/** The boards of a stack, or of the whole yard: looked through, chosen, then labelled, changed or moved. */
export function BoardList({ stackId, whenEmpty }: { stackId: number | null; whenEmpty: React.ReactNode }) {
  const [search, setSearch] = useState('');
  const pages = useBoardPages(stackId, useDeferredValue(search.trim()));
  const [chosen, setChosen] = useState<ReadonlyMap<number, BoardRow>>(new Map());
  const [choosing, setChoosing] = useState(false);
  const [open, setOpen] = useState<'nothing' | 'move' | 'change'>('nothing');
  const units = useUnits();
  const { total } = pages;

  function choose(board: BoardRow, isChosen: boolean): void {
    const changed = new Map(chosen);
    if (isChosen) changed.set(board.id, board);
    else changed.delete(board.id);
    setChosen(changed);
  }

  async function chooseAll(): Promise<void> {
    setChoosing(true);
    const all = await attempt(fetchBoards(stackId, search.trim(), MOST_CHOSEN));
    setChoosing(false);
    if (all) setChosen(new Map(all.rows.map((board) => [board.id, board])));
  }

  return (
    <>
      <div className="board-list-head">
        <TextField
          label="Search"
          type="search"
          placeholder="ID, wood or log"
          maxLength={80}
          value={search}
          onValue={setSearch}
        />
        {total !== null && total > 0 && (
          <ChosenBar
            total={total}
            chosen={[...chosen.keys()]}
            choosing={choosing}
            onAll={chooseAll}
            onNone={() => setChosen(new Map())}
            onChange={() => setOpen('change')}
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
          <EmptyState sentence={`No board answers to “${search.trim()}”.`}>
            <Button onClick={() => setSearch('')}>Show all</Button>
          </EmptyState>
        ))}
      {total !== null && total > 0 && (
        <BoardRows
          pages={pages}
          total={total}
          units={units}
          showStack={stackId === null}
          chosen={chosen}
          onChosen={choose}
        />
      )}
      {open === 'change' && (
        <ChangeTogetherForm
          boardIds={[...chosen.keys()].sort((a, b) => a - b)}
          onClose={() => setOpen('nothing')}
        />
      )}
      {open === 'move' && (
        <MoveForm
          what={chosen.size === 1 ? 'one board' : `${chosen.size} boards`}
          target={{ boardIds: [...chosen.keys()] }}
          onClose={() => setOpen('nothing')}
        />
      )}
    </>
  );
}

/** How many boards there are and are chosen, and what can be done with the chosen ones. */
function ChosenBar({
  total,
  chosen,
  choosing,
  onAll,
  onNone,
  onChange,
  onMove,
}: {
  total: number;
  chosen: readonly number[];
  /** While all of them are being fetched. */
  choosing: boolean;
  onAll: () => void;
  onNone: () => void;
  onChange: () => void;
  onMove: () => void;
}) {
  const all = total === 1 ? '1 board' : `${total.toLocaleString('en')} boards`;
  return (
    <div className="chosen-bar">
      <p role="status">
        {chosen.length === 0 ? all : `${chosen.length.toLocaleString('en')} of ${all} chosen`}
      </p>
      <Actions>
        {chosen.length < total && (
          <Button disabled={choosing} onClick={onAll}>
            {choosing ? 'Choosing …' : 'Choose all'}
          </Button>
        )}
        {chosen.length > 0 && (
          <>
            <Button onClick={onNone}>Choose none</Button>
            <Button onClick={onChange}>Change …</Button>
            <Button onClick={onMove}>Move …</Button>
            <ButtonLink kind="main" href={hrefOf({ name: 'labels', boardIds: chosen.slice(0, MOST_LABELS) })}>
              {chosen.length > MOST_LABELS ? `Labels of the first ${MOST_LABELS}` : 'Labels'}
            </ButtonLink>
          </>
        )}
      </Actions>
    </div>
  );
}
