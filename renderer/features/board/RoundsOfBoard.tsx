import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Await } from '../../ui/Await.tsx';
import { Actions } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ChangeDate } from '../round/ChangeDate.tsx';
import css from './board.module.css';

/** The rounds in which the board was read, newest first; the date of a finished one can be corrected. */
export function RoundsOfBoard({ boardId }: { boardId: number }) {
  const { say, formats } = useWords();
  const rounds = useQuery('rounds.ofBoard', { boardId });
  return (
    <Await of={[rounds]}>
      {(all) => (
        <>
          <h3>{say('board.rounds')}</h3>
          <ul className={`list ${css.rounds}`}>
            {all.map((round) => (
              <li key={round.id}>
                <a href={hrefOf({ name: 'round', id: round.id })}>
                  {round.isDated ? formats.day(round.startedAt) : formats.dateTime(round.startedAt)}
                </a>
                {round.finishedAt === null ? (
                  <span>{say('board.round-running')}</span>
                ) : (
                  <Actions>
                    <ChangeDate round={round} />
                  </Actions>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </Await>
  );
}
