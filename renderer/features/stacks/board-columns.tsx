import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { thicknessOf, type When } from '../../../shared-core/words/message.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { CallBadge } from '../../ui/CallBadge.tsx';
import type { Column } from '../../ui/DataTable.tsx';
import { likelyDate } from './ready-words.ts';

/** When a board is likely ready: where it is, else where it would be soonest. */
const readyWhen = ({ outlook }: BoardRow): When | null => outlook?.here ?? outlook?.elsewhere?.when ?? null;

/** A board in a list of boards. The id of a column is what the list is sorted by. */
export function boardColumns(words: Words, ofSeveralStacks: boolean): Column<BoardRow>[] {
  const { say, formats } = words;

  function ready(board: BoardRow) {
    const { latest, outlook, bestPlaceName: placeName } = board;
    if (latest?.call === 'probe-again') return <small>{say(latest.reason)}</small>;
    const when = readyWhen(board);
    if (when === null) return null;
    const date = likelyDate(words, when);
    return outlook?.here || placeName === null ? date : say('stacks.ready-at', { date, placeName });
  }

  return [
    {
      id: 'code',
      head: say('stacks.column-board'),
      cell: ({ code }) => <span translate="no">{code}</span>,
      sortBy: 'caller',
      widthRem: 6.25,
    },
    {
      id: 'average',
      head: say('stacks.column-average'),
      cell: ({ latest }) =>
        latest && latest.averagePct !== null ? (
          <strong>{formats.mc(latest.averagePct)}</strong>
        ) : (
          latest && <em>{say('stacks.no-average')}</em>
        ),
      sortBy: 'caller',
      widthRem: 6,
    },
    {
      id: 'shell-core',
      head: say('stacks.column-shell-core'),
      cell: ({ latest }) =>
        latest &&
        latest.shellPct !== null &&
        latest.corePct !== null &&
        `${formats.mc(latest.shellPct)} · ${formats.mc(latest.corePct)}`,
      widthRem: 9,
      optional: true,
    },
    {
      id: 'call',
      head: say('stacks.column-call'),
      cell: ({ latest }) => (latest ? <CallBadge call={latest.call} /> : <em>{say('stacks.not-probed')}</em>),
      sortBy: 'caller',
      widthRem: 9.25,
    },
    {
      id: 'ready',
      head: say('stacks.column-ready'),
      cell: ready,
      sortBy: 'caller',
      widthRem: 9.25,
    },
    {
      id: 'read',
      head: say('stacks.column-read'),
      cell: ({ latest }) => latest && formats.day(latest.at),
      sortBy: 'caller',
      widthRem: 5.5,
    },
    ...(ofSeveralStacks
      ? [
          {
            id: 'stack',
            head: say('stacks.column-stack-place'),
            cell: ({ stackName }: BoardRow) => <span translate="no">{stackName}</span>,
            below: ({ placeName, placeSince }: BoardRow) =>
              say('board.at-place', { placeName, sinceOn: placeSince }),
            widthRem: 15,
            optional: true,
          },
        ]
      : []),
    {
      id: 'species',
      head: say('stacks.column-species'),
      cell: ({ speciesName }) => <span translate="no">{speciesName}</span>,
      below: (board) => formats.thickness(thicknessOf(board)),
      sortBy: 'caller',
      widthRem: 10,
      optional: true,
    },
    {
      id: 'likely',
      head: say('stacks.column-likely'),
      cell: ({ latest }) =>
        latest &&
        latest.lowPct !== null &&
        latest.highPct !== null &&
        formats.mcInterval({ minPct: latest.lowPct, maxPct: latest.highPct }),
      below: (board) => {
        const when = readyWhen(board);
        return when && say('stacks.ready-between', { readyWhen: when });
      },
      widthRem: 10,
      optional: true,
    },
    ...(ofSeveralStacks
      ? []
      : [
          {
            id: 'place',
            head: say('stacks.column-place'),
            cell: ({ placeName }: BoardRow) => <span translate="no">{placeName}</span>,
            below: ({ placeSince }: BoardRow) => say('stacks.since', { sinceOn: placeSince }),
            widthRem: 9,
            optional: true,
          },
        ]),
    {
      id: 'log',
      head: say('stacks.column-log'),
      cell: ({ log }) => <span translate="no">{log}</span>,
      widthRem: 7,
      optional: true,
    },
  ];
}
