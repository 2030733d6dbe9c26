import type { BoardRow, LatestFinding } from '../../../shared-core/contract/yard.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { CallBadge } from '../../ui/CallBadge.tsx';
import type { Column } from '../../ui/DataTable.tsx';

/** A board in a list of boards. */
export function boardColumns({ say, formats }: Words, ofSeveralStacks: boolean): Column<BoardRow>[] {
  return [
    {
      id: 'code',
      sortBy: 'caller',
      head: say('stacks.column-board'),
      cell: ({ code }) => <span translate="no">{code}</span>,
      below: ({ log }) => log && say('stacks.log', { logName: log }),
      widthRem: 8.5,
    },
    {
      id: 'species',
      sortBy: 'caller',
      head: say('stacks.column-species'),
      cell: ({ speciesName }) => <span translate="no">{speciesName}</span>,
      below: (board) => formats.thickness(thicknessOf(board)),
      optional: true,
    },
    {
      id: 'average',
      sortBy: 'caller',
      head: say('stacks.column-mc'),
      cell: ({ latest }) =>
        latest && latest.averagePct !== null ? (
          <strong>{formats.mc(latest.averagePct)}</strong>
        ) : (
          <em>{say(latest ? 'stacks.no-average' : 'stacks.not-probed')}</em>
        ),
      below: ({ latest }) => latest && likely(latest),
      widthRem: 10,
    },
    {
      id: 'call',
      sortBy: 'caller',
      head: say('stacks.column-call'),
      cell: ({ latest }) => latest && <CallBadge call={latest.call} />,
      below: ({ latest }) => latest && formats.day(latest.at),
      widthRem: 12,
    },
    {
      id: 'place',
      head: say(ofSeveralStacks ? 'stacks.column-stack-place' : 'stacks.column-place'),
      cell: ({ stackName, placeName }) => (
        <span translate="no">{ofSeveralStacks ? stackName : placeName}</span>
      ),
      below: ({ placeName, placeSince }) =>
        ofSeveralStacks
          ? say('board.at-place', { placeName, sinceOn: placeSince })
          : say('stacks.since', { sinceOn: placeSince }),
      widthRem: ofSeveralStacks ? 15 : 11,
      optional: true,
    },
    {
      id: 'shell-core',
      head: say('stacks.column-shell-core'),
      cell: ({ latest }) =>
        latest && latest.shellPct !== null && say('stacks.shell', { shellPct: latest.shellPct }),
      below: ({ latest }) =>
        latest && latest.corePct !== null && say('stacks.core', { corePct: latest.corePct }),
      widthRem: 8,
      optional: true,
    },
  ];

  function likely({ lowPct, highPct }: LatestFinding) {
    if (lowPct === null || highPct === null) return null;
    return say('stacks.likely', { likelyInterval: { minPct: lowPct, maxPct: highPct } });
  }
}
