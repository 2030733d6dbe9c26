import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { Actions, ButtonLink } from '../../parts/Button.tsx';
import { agoWords, dayWords } from '../../parts/days.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { CallCounts } from './CallCounts.tsx';

/** One stack: what it is, how its boards stand, and what to do with it. */
export function StackCard({ stack, now }: { stack: StackRow; now: Date }) {
  return (
    <article className="stack-card" aria-label={stack.name}>
      <header>
        <h2>
          <a href={hrefOf({ name: 'stack', id: stack.id })}>{stack.name}</a>
        </h2>
        <p>
          {stack.placeName} · for {stack.endUseName}
        </p>
      </header>
      <CallCounts calls={stack.calls} boards={stack.boards} probed={stack.probed} />
      <p className="stack-facts">
        {stack.boards === 1 ? '1 board' : `${stack.boards} boards`}
        {stack.lastProbedAt ? (
          <>
            {' · last probed '}
            <time dateTime={stack.lastProbedAt} title={dayWords(stack.lastProbedAt)}>
              {agoWords(stack.lastProbedAt, now)}
            </time>
          </>
        ) : (
          stack.boards > 0 && ' · never probed'
        )}
      </p>
      {stack.note && <p className="stack-note">{stack.note}</p>}
      <StackActions stack={stack} />
    </article>
  );
}

/** Probe first, or go on with the round that is open; what needs boards is left out where there are none. */
function StackActions({ stack }: { stack: StackRow }) {
  const named = (words: string) => `${words}: ${stack.name}`;
  return (
    <Actions>
      {stack.boards > 0 && <ProbeLink stack={stack} />}
      <ButtonLink
        kind={stack.boards === 0 ? 'main' : 'plain'}
        href={hrefOf({ name: 'stack', id: stack.id })}
        aria-label={named(stack.boards === 0 ? 'Add boards' : 'Open')}
      >
        {stack.boards === 0 ? 'Add boards' : 'Open'}
      </ButtonLink>
      {stack.boards > 0 && (
        <ButtonLink
          href={hrefOf({ name: 'labels', boardIds: [], stackId: stack.id })}
          aria-label={named('Labels')}
        >
          Labels
        </ButtonLink>
      )}
    </Actions>
  );
}

/** Starts a round over the stack, or goes on with the one that was begun. */
export function ProbeLink({ stack }: { stack: StackRow }) {
  return stack.openRoundId === null ? (
    <ButtonLink
      kind="main"
      href={hrefOf({ name: 'round-start', stackId: stack.id })}
      aria-label={`Probe: ${stack.name}`}
    >
      Probe
    </ButtonLink>
  ) : (
    <ButtonLink
      kind="main"
      href={hrefOf({ name: 'round', id: stack.openRoundId })}
      aria-label={`Go on with the round: ${stack.name}`}
    >
      Go on with the round
    </ButtonLink>
  );
}
