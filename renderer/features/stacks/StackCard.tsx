import { useId } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Actions, ButtonLink } from '../../ui/Button.tsx';
import { CallShape, callsInOrder, inkOf } from '../../ui/CallBadge.tsx';
import { useWords } from '../../words.ts';
import { NextOfStack } from './NextOfStack.tsx';
import { readyDay, readyFacts } from './ready-words.ts';
import css from './stacks-screen.module.css';

/** One stack: how many boards are what, how dry, ready when, and what to do with it. */
export function StackCard({
  stack,
  isFirst,
  onMove,
}: {
  stack: StackRow;
  /** Whether the banner above says already why it is due. */
  isFirst: boolean;
  onMove: () => void;
}) {
  const { say } = useWords();
  const id = useId();
  const { boards, elsewhere, due, note, name: stackName, placeName, endUseName } = stack;
  const named = (actionName: string) => say('stacks.action-of-stack', { actionName, stackName });
  return (
    <article className={`sheet ${css.card}`} aria-labelledby={id}>
      <header>
        <h2 id={id} translate="no">
          <a href={hrefOf({ name: 'stack', id: stack.id })}>{stackName}</a>
        </h2>
        <p className="soft">{say('stacks.place-and-use', { placeName, endUseName })}</p>
      </header>
      {boards > 0 && <StackFigures stack={stack} />}
      {boards === 0 && elsewhere.boards === 0 && <p>{say('stacks.no-boards')}</p>}
      {elsewhere.boards > 0 && (
        <p>{say(boards === 0 ? 'stacks.all-elsewhere' : 'stacks.elsewhere', { boards: elsewhere.boards })}</p>
      )}
      {due && !isFirst && (
        <p>
          <strong>{say(due.why)}</strong>
        </p>
      )}
      {note && (
        <p className="soft" translate="no">
          {note}
        </p>
      )}
      <Actions>
        {boards > 0 ? (
          <>
            <NextOfStack stack={stack} onMove={onMove} />
            <ButtonLink
              href={hrefOf({ name: 'labels', boardIds: [], stackId: stack.id })}
              aria-label={named(say('stacks.labels'))}
            >
              {say('stacks.labels')}
            </ButtonLink>
          </>
        ) : (
          <>
            {due && <NextOfStack stack={stack} onMove={onMove} />}
            <ButtonLink
              kind={due ? 'plain' : 'main'}
              href={hrefOf({ name: 'stack', id: stack.id })}
              aria-label={named(say(elsewhere.boards > 0 ? 'stacks.open-stack' : 'stacks.add-boards'))}
            >
              {say(elsewhere.boards > 0 ? 'stacks.open-stack' : 'stacks.add-boards')}
            </ButtonLink>
          </>
        )}
      </Actions>
    </article>
  );
}

/** The call of most of its boards and how many have it; the average against the target; when it is likely ready. */
function StackFigures({ stack }: { stack: StackRow }) {
  const words = useWords();
  const { say, formats } = words;
  const { boards, calls, probed, halfProbed, averagePct, averaged, targetRange, shouldBeReady } = stack;
  const { isForecasting, nextReady, lastReady, withDay, averageRead, withoutPlace } = stack;
  const unread = boards - probed - halfProbed;
  const countCode = (call: Call) =>
    call === 'bring-in' && withoutPlace >= calls[call]
      ? 'stacks.count-add-place'
      : (`stacks.count-${call}` as const);
  const present = callsInOrder.filter((call) => calls[call] > 0);
  const most = present.toSorted((a, b) => calls[b] - calls[a])[0];
  const others = present.filter((call) => call !== most);
  return (
    <dl className={css.figures}>
      <div>
        <dd style={most && inkOf(most)}>
          {most && <CallShape call={most} />}
          {most
            ? say(countCode(most), { boards: calls[most] })
            : halfProbed > 0
              ? say('stacks.count-half-probed', { boards: halfProbed })
              : say('stacks.boards', { boards })}
        </dd>
        <dt>
          {probed + halfProbed === 0 ? say('stacks.not-probed') : say('stacks.count-of', { boards })}
          {others.map((call) => (
            <span key={call} style={inkOf(call)}>
              <CallShape call={call} /> {say(countCode(call), { boards: calls[call] })}
            </span>
          ))}
          {probed > 0 && halfProbed > 0 && (
            <span>{say('stacks.count-half-probed', { boards: halfProbed })}</span>
          )}
          {probed + halfProbed > 0 && unread > 0 && (
            <span>{say('stacks.count-not-probed', { boards: unread })}</span>
          )}
        </dt>
      </div>
      {averagePct !== null && (
        <div>
          <dd>{formats.mc(averagePct)}</dd>
          <dt>
            {say('stacks.average-target', {
              averaged,
              which: averaged === probed ? 'all' : 'some',
              targetRange,
            })}
            {averageRead !== null && <span>{say('stacks.average-read', { probedRange: averageRead })}</span>}
          </dt>
        </div>
      )}
      {isForecasting && (
        <div>
          <dt>{say('stacks.forecasting')}</dt>
        </div>
      )}
      {shouldBeReady > 0 && (
        <div>
          <dd>{shouldBeReady}</dd>
          <dt>{say('stacks.should-be-ready', { which: calls.ready > 0 ? 'more' : 'first' })}</dt>
        </div>
      )}
      {nextReady && !isForecasting && nextReady.when.likely > formats.localDay(new Date()) && (
        <div>
          <dd>{say('stacks.ready-day', readyDay(nextReady.when, formats))}</dd>
          <dt>
            {say('stacks.next-likely', {
              ...readyFacts(nextReady, words),
              which: withDay < boards ? 'some' : 'all',
              withDay,
              boards,
            })}
            {lastReady && lastReady.when.likely !== nextReady.when.likely && (
              <span>{say('stacks.last-likely', readyDay(lastReady.when, formats))}</span>
            )}
          </dt>
        </div>
      )}
    </dl>
  );
}
