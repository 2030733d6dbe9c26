import { useState } from 'react';
import type { ListedAct } from '../../../shared-core/contract/requests/acts.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useEach } from '../../data/useQuery.ts';
import { undoAct } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { EmptyState, Failed, Loading } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';

const PAGE = 50;

/** What was done in the yard or to a board, the newest first, each with Undo or Redo. */
export function ActList({ boardId }: { boardId: number | null }) {
  const { say, formats } = useWords();
  /** Where each page begins. */
  const [pages, setPages] = useState<readonly (number | null)[]>([null]);
  const { underWay, run, cancel } = useLongWork();
  const asked = useEach(
    'acts.list',
    pages.map((before) => ({ boardId, before, limit: PAGE })),
  );
  const acts = asked.flatMap(({ output }) => output?.acts ?? []);
  const failed = asked.find(({ error }) => error !== null);
  const next = asked.at(-1)?.output?.next ?? null;
  const toggle = ({ id, isUndone }: ListedAct): void =>
    void run((work) => undoAct(id, isUndone ? 'redo' : 'undo', work), say('frame.undo-stopped'));
  if (failed?.error) return <Failed sentence={failed.error} again={failed.again} />;
  if (acts.length === 0) {
    return asked.some(({ loading }) => loading) ? <Loading /> : <EmptyState sentence={say('act.none')} />;
  }
  return (
    <>
      {underWay !== null && underWay.total > 0 && (
        <WorkUnderWay label={say('frame.undoing')} {...underWay} onCancel={cancel} />
      )}
      <DataTable
        name={say('act.list')}
        rows={acts}
        keyOf={({ id }) => id}
        columns={[
          {
            id: 'what',
            head: say('act.what'),
            widthRem: 36,
            cell: ({ line, isUndone }) =>
              isUndone ? (
                <>
                  <s className="soft">{say(line)}</s> <strong>{say('act.is-undone')}</strong>
                </>
              ) : (
                say(line)
              ),
          },
          { id: 'when', head: say('act.when'), widthRem: 14, cell: ({ at }) => formats.dateTime(at) },
          {
            id: 'actions',
            head: say('act.actions'),
            headSpokenOnly: true,
            widthRem: 8,
            cell: (act) => (
              <Button
                disabled={underWay !== null}
                onClick={() => toggle(act)}
                aria-label={say(act.isUndone ? 'act.redo-this' : 'act.undo-this', { line: act.line })}
              >
                {say(act.isUndone ? 'frame.redo' : 'frame.undo')}
              </Button>
            ),
          },
        ]}
      />
      {next !== null && (
        <Actions>
          <Button onClick={() => setPages([...pages, next])}>{say('act.older')}</Button>
        </Actions>
      )}
    </>
  );
}
