import { useId } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Actions, ButtonLink } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { CallCounts } from './CallCounts.tsx';

/** One stack: what it is, the calls on its boards, and what to do with it. */
export function StackCard({ stack }: { stack: StackRow }) {
  const { say, formats } = useWords();
  const id = useId();
  const { boards, lastProbedAt, placeName, endUseName } = stack;
  return (
    <article className="stack-card" aria-labelledby={id}>
      <header>
        <h2 id={id} translate="no">
          <a href={hrefOf({ name: 'stack', id: stack.id })}>{stack.name}</a>
        </h2>
        <p>{say('stacks.place-and-use', { placeName, endUseName })}</p>
      </header>
      <CallCounts calls={stack.calls} boards={boards} probed={stack.probed} />
      {lastProbedAt !== null && (
        <p className="stack-facts">
          <time dateTime={lastProbedAt} title={formats.day(lastProbedAt)}>
            {say('stacks.last-probed', { boards, probedAgo: formats.ago(lastProbedAt) })}
          </time>
        </p>
      )}
      {lastProbedAt === null && boards > 0 && (
        <p className="stack-facts">{say('stacks.never-probed', { boards })}</p>
      )}
      {stack.note && (
        <p className="stack-note" translate="no">
          {stack.note}
        </p>
      )}
      <StackActions stack={stack} />
    </article>
  );
}

/** Probe first, or resume the open round; what needs boards is not offered where there are none. */
function StackActions({ stack }: { stack: StackRow }) {
  const { say } = useWords();
  const hasBoards = stack.boards > 0;
  const open = say(hasBoards ? 'stacks.open' : 'stacks.add-boards');
  const labels = say('stacks.labels');
  const named = (actionName: string) => say('stacks.action-of-stack', { actionName, stackName: stack.name });
  return (
    <Actions>
      {hasBoards && <ProbeLink stack={stack} />}
      <ButtonLink
        kind={hasBoards ? 'plain' : 'main'}
        href={hrefOf({ name: 'stack', id: stack.id })}
        aria-label={named(open)}
      >
        {open}
      </ButtonLink>
      {hasBoards && (
        <ButtonLink
          href={hrefOf({ name: 'labels', boardIds: [], stackId: stack.id })}
          aria-label={named(labels)}
        >
          {labels}
        </ButtonLink>
      )}
    </Actions>
  );
}

/** Starts a round over the stack, or resumes the one that is open. */
export function ProbeLink({ stack }: { stack: StackRow }) {
  const { say } = useWords();
  const { id: stackId, openRoundId, name: stackName } = stack;
  const actionName = say(openRoundId === null ? 'stacks.probe' : 'stacks.resume');
  return (
    <ButtonLink
      kind="main"
      href={hrefOf(
        openRoundId === null ? { name: 'round-start', stackId } : { name: 'round', id: openRoundId },
      )}
      aria-label={say('stacks.action-of-stack', { actionName, stackName })}
    >
      {actionName}
    </ButtonLink>
  );
}
