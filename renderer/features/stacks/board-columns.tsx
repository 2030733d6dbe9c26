import type { ReactNode } from 'react';
import type { BoardRow, BoardSort } from '../../../shared-core/contract/yard.ts';
import { readyOf } from '../../../shared-core/probing/calls/judgement.ts';
import { isFrozen } from '../../../shared-core/probing/calls/round-step.ts';
import { whereWords } from '../../../shared-core/record-words/where-words.ts';
import { whyArchived } from '../../../shared-core/record-words/why-archived.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { averageNote } from '../../ui/average-note.ts';
import { CallOrSpots } from '../../ui/CallOrSpots.tsx';
import type { Column } from '../../ui/DataTable.tsx';
import { averageText, mcOrDash } from '../../ui/McValue.tsx';
import { readyDay, readyInRow } from './ready-words.ts';

type BoardColumn =
  | Exclude<BoardSort, 'added'>
  | 'archived'
  | 'shell-core'
  | 'stack'
  | 'likely'
  | 'place'
  | 'log';
type More = Omit<Column<BoardRow>, 'id' | 'head' | 'cell' | 'widthRem'>;
const sorted: More = { sortBy: 'caller' };
const optional: More = { optional: true };

/**
 * A board in a list of boards, of one stack, of all, or of those that left the yard. The id of a column is what the list is
 * sorted by.
 */
export function boardColumns(
  words: Words,
  which: 'stack' | 'boards' | 'archived-boards',
): Column<BoardRow>[] {
  const { say, formats } = words;
  const name = (given: string): ReactNode => <span translate="no">{given}</span>;
  const column = (
    id: BoardColumn,
    widthRem: number,
    cell: (board: BoardRow) => ReactNode,
    more: More,
  ): Column<BoardRow> => ({ id, head: say(`stacks.column-${id}`), widthRem, cell, ...more });

  function average({ latest }: BoardRow): ReactNode {
    if (!latest) return null;
    if (latest.averagePct === null)
      return latest.shellPct === null ? <em>{say('stacks.no-average')}</em> : mcOrDash(null, formats);
    return <strong>{averageText(latest, words)}</strong>;
  }

  function shellAndCore({ latest }: BoardRow): ReactNode {
    if (latest?.isDepthUnknown) return say('stacks.depth-unknown');
    if (latest?.shellPct == null) return null;
    if (latest.corePct === null) return say('stacks.core-not-read', { shellPct: latest.shellPct });
    return `${formats.mc(latest.shellPct)} · ${formats.mc(latest.corePct)}`;
  }

  function ready(board: BoardRow): ReactNode {
    const { latest } = board;
    if (latest && isFrozen(latest)) return <small>{say('stacks.frozen')}</small>;
    if (latest?.call === 'probe-again') return <small>{say(latest.reason)}</small>;
    return readyInRow(board, words);
  }

  function likely({ latest }: BoardRow): ReactNode {
    if (latest?.lowPct == null || latest.highPct === null) return null;
    return formats.mcInterval({ minPct: latest.lowPct, maxPct: latest.highPct });
  }

  function readyBetween(board: BoardRow): ReactNode {
    const dated = readyOf(board.judgement);
    return (
      dated && say('stacks.ready-between', { readyWhen: dated.when, end: readyDay(dated.when, formats).end })
    );
  }

  const stack = column('stack', 15, ({ stackName }) => name(stackName), {
    ...optional,
    below: (board) => whereWords(board, say),
  });
  const place = column('place', 9, ({ placeName }) => name(placeName), {
    ...optional,
    below: ({ placeSince }) => say('stacks.since', { sinceOn: placeSince }),
  });
  const code = column('code', 7.25, ({ code }) => name(code), sorted);
  const species = column('species', 10, ({ speciesName }) => name(formats.named(speciesName)), {
    ...sorted,
    ...optional,
    below: (board) => formats.thickness(thicknessOf(board)),
  });
  const log = column('log', 7, ({ log }) => name(log), optional);
  const call = column(
    'call',
    9.25,
    ({ latest }) => (latest ? <CallOrSpots finding={latest} /> : <em>{say('stacks.not-probed')}</em>),
    sorted,
  );
  const read = column('read', 5.5, ({ latest }) => latest && formats.day(latest.at), sorted);
  const left = column(
    'archived',
    14,
    ({ archived }) => archived && `${whyArchived(archived, say)} · ${formats.day(archived.at)}`,
    { below: ({ archived }) => archived?.note && name(archived.note) },
  );
  const averageRead = column('average', 6.75, average, {
    ...sorted,
    below: ({ latest }) => latest && averageNote(latest, say),
  });
  if (which === 'archived-boards') return [code, left, averageRead, read, stack, species, log];
  return [
    code,
    averageRead,
    column('shell-core', 9, shellAndCore, optional),
    call,
    column('ready', 8.25, ready, {
      ...sorted,
      below: (board) =>
        board.latest === null && readyInRow(board, words) !== null && say('stacks.by-forecast'),
    }),
    read,
    ...(which === 'boards' ? [stack] : []),
    species,
    column('likely', 10, likely, { ...optional, below: readyBetween }),
    ...(which === 'boards' ? [] : [place]),
    log,
  ];
}
