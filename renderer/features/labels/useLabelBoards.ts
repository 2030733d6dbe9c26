import { useEffect, useState } from 'react';
import { bridge } from '../../data/bridge.ts';
import { useChanges } from '../../data/useChanges.ts';
import { fetchBoards } from '../../stores/boards.ts';
import { sentenceOf } from '../../stores/notices.ts';
import { type LabelBoard, MOST_LABELS, ofContent, ofRow } from './label-choice.ts';

interface LabelBoards {
  boards: LabelBoard[];
  /** How many there would be were there no limit. */
  total: number;
}

/** The boards that labels can be made of: those named by id, or those of a stack, or all of the yard. */
export function useLabelBoards(boardIds: readonly number[], stackId: number | null) {
  const [asked, setAsked] = useState(0);
  const [answer, setAnswer] = useState<{ key: string; found: LabelBoards | null; error: string | null }>();
  const changes = useChanges('boards', 'stacks', 'species');
  const key = boardIds.length > 0 ? `boards ${boardIds.join()}` : `stack ${stackId}`;

  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` holds the ids and the stack; `changes` and `asked` are reasons to ask again.
  useEffect(() => {
    let stale = false;
    const fetched = boardIds.length > 0 ? namedBoards(boardIds) : boardsOfStack(stackId);
    fetched
      .then((found) => !stale && setAnswer({ key, found, error: null }))
      .catch((error: unknown) => !stale && setAnswer({ key, found: null, error: sentenceOf(error) }));
    return () => {
      stale = true;
    };
  }, [key, changes, asked]);

  const current = answer?.key === key ? answer : undefined;
  return {
    found: current?.found ?? null,
    error: current?.error ?? null,
    again: () => setAsked((count) => count + 1),
  };
}

async function namedBoards(ids: readonly number[]): Promise<LabelBoards> {
  const named = ids.slice(0, MOST_LABELS);
  const contents = await bridge().query('labels.contents', { boardIds: named });
  return {
    boards: contents.flatMap((content, index) => ofContent(named[index] ?? 0, content)),
    total: ids.length,
  };
}

async function boardsOfStack(stackId: number | null): Promise<LabelBoards> {
  const { rows, total } = await fetchBoards(stackId, '', 0, MOST_LABELS);
  return { boards: rows.map(ofRow), total };
}
