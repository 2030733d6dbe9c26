import { useDeferredValue, useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { TextField } from '../../form/Field.tsx';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import { useBoardInWords } from './useBoardInWords.ts';

/** As many as are read in a moment; others are found by their ID. */
const SHOWN = 5;

/** Boards that may be the same as one, the likeliest first, to choose from. */
export function AlikeBoards({
  board,
  question,
  chosen,
  error,
  onChoose,
}: {
  board: BoardRow;
  /** What is asked about them. */
  question: string;
  chosen: BoardRow | null;
  error: string | null;
  onChoose: (other: BoardRow) => void;
}) {
  const { say } = useWords();
  const inWords = useBoardInWords();
  const [search, setSearch] = useState('');
  const asked = { boardId: board.id, search: useDeferredValue(search.trim()), limit: SHOWN };
  const alike = useQuery('boards.alike', asked);
  return (
    <div className="column">
      <TextField
        label={say('life.merge-search')}
        type="search"
        maxLength={16}
        value={search}
        error={error}
        onValue={setSearch}
      />
      <Await of={[alike]}>
        {(boards) =>
          boards.length === 0 ? (
            <p>{say('life.merge-none')}</p>
          ) : (
            <Choice
              label={question}
              isList
              value={chosen && String(chosen.id)}
              options={boards.map((each) => ({
                value: String(each.id),
                label: (
                  <>
                    <b translate="no">{each.code}</b>{' '}
                    <span className="soft" translate="no">
                      {inWords(each)}
                    </span>
                  </>
                ),
              }))}
              onValue={(id) => onChoose(boards.find((each) => String(each.id) === id) as BoardRow)}
            />
          )
        }
      </Await>
    </div>
  );
}
