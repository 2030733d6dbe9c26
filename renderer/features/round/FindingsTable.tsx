import { useState } from 'react';
import type { RoundBoard, RoundFinding } from '../../../shared-core/contract/round.ts';
import { dryEnoughToBringIn } from '../../../shared-core/probing/calls/call-here.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { averageNote } from '../../ui/average-note.ts';
import { callsInOrder } from '../../ui/CallBadge.tsx';
import { CallFilter, type Filter } from '../../ui/CallFilter.tsx';
import { CallOrSpots } from '../../ui/CallOrSpots.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { averageText, mcOrDash } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';

/** A round's boards with what it found, and the reason that decides. */
export function FindingsTable({ boards }: { boards: readonly RoundBoard[] }) {
  const words = useWords();
  const { say, formats } = words;
  const [filter, setFilter] = useState<Filter>('all');
  const of = (which: Filter) =>
    boards.filter(({ isRead, finding }) =>
      which === 'all'
        ? true
        : which === 'not-probed'
          ? !isRead || finding?.call === null
          : finding?.call === which,
    );
  const coreOf = ({ shellPct, corePct }: RoundFinding): string =>
    corePct === null && shellPct !== null ? say('findings.core-not-read') : mcOrDash(corePct, formats);
  const filters: Filter[] = ['all', ...callsInOrder, 'not-probed'];
  return (
    <DataTable
      name={say('round-page.boards')}
      columnsName="findings"
      rows={of(filter)}
      actions={
        <CallFilter
          value={filter}
          counts={Object.fromEntries(filters.map((each) => [each, of(each).length]))}
          onValue={setFilter}
        />
      }
      keyOf={({ boardId }) => boardId}
      hrefOf={({ boardId }) => hrefOf({ name: 'board', id: boardId })}
      columns={[
        {
          id: 'board',
          head: say('findings.board'),
          cell: ({ code }) => <span translate="no">{code}</span>,
          sortBy: ({ code }) => code,
        },
        {
          id: 'average',
          head: say('findings.average'),
          cell: ({ finding }) => <strong>{finding === null ? '–' : averageText(finding, words)}</strong>,
          below: ({ finding }) =>
            finding && (
              <>
                {averageNote(finding, say)}{' '}
                {finding.lowPct !== null &&
                  finding.highPct !== null &&
                  formats.mcInterval({ minPct: finding.lowPct, maxPct: finding.highPct })}
              </>
            ),
          sortBy: ({ finding }) => finding?.averagePct ?? null,
          align: 'end',
        },
        {
          id: 'call',
          head: say('findings.call'),
          cell: ({ finding, isRead }) =>
            finding ? (
              <CallOrSpots finding={finding} />
            ) : (
              say(isRead ? 'findings.being-judged' : 'findings.not-probed')
            ),
          below: ({ isReadSince }) => isReadSince && say('findings.read-since'),
          sortBy: ({ finding }) => (finding?.call ? callsInOrder.indexOf(finding.call) : null),
          widthRem: 12,
        },
        {
          id: 'why',
          head: say('findings.why'),
          cell: ({ finding }) =>
            finding &&
            [finding.reason, ...(finding.call === 'bring-in' ? [dryEnoughToBringIn] : [])]
              .map((each) => say(each))
              .join(' '),
          widthRem: 22,
        },
        {
          id: 'shell-core',
          head: say('findings.shell-core'),
          cell: ({ finding }) =>
            finding?.isDepthUnknown
              ? say('stacks.depth-unknown')
              : finding && `${mcOrDash(finding.shellPct, formats)} / ${coreOf(finding)}`,
          align: 'end',
          optional: true,
        },
        {
          id: 'species',
          head: say('findings.species'),
          cell: ({ speciesName }) => <span translate="no">{formats.named(speciesName)}</span>,
          optional: true,
        },
      ]}
    />
  );
}
