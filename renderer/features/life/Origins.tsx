import { Fragment } from 'react';
import type { Origin } from '../../../shared-core/contract/origin.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useWords } from '../../words.ts';

/** What a board was cut from, each a link; nothing for others. */
export function CameFrom({ origins }: { origins: readonly Origin[] }) {
  const { say } = useWords();
  return origins.map(({ boardId, code, how, at }) => (
    <Fragment key={boardId}>
      {' · '}
      {say('life.origin', { how })} <BoardLink boardId={boardId} code={code} />{' '}
      {say('life.origin-day', { cutOn: at })}
    </Fragment>
  ));
}

/** What a board became, each a link. */
export function BecameOf({ origins }: { origins: readonly Origin[] }) {
  const { say } = useWords();
  return (
    <>
      {say('life.became')}{' '}
      {origins.map(({ boardId, code }, index) => (
        <Fragment key={boardId}>
          {index > 0 && ', '}
          <BoardLink boardId={boardId} code={code} />
        </Fragment>
      ))}
      .
    </>
  );
}

const BoardLink = ({ boardId, code }: Pick<Origin, 'boardId' | 'code'>) => (
  <a translate="no" href={hrefOf({ name: 'board', id: boardId })}>
    {code}
  </a>
);
