import type { StackVolume } from '../../../shared-core/contract/stack-volume.ts';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useUnits } from '../../stores/settings.ts';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import css from './stack-screen.module.css';

/** What a stack amounts to, in one line: its volume as the trade tallies it, and its weight now and at its target. */
export function StackTally({ stackId }: { stackId: number }) {
  const volume = useQuery('stacks.volume', { id: stackId });
  return <Await of={[volume]}>{(output) => <Tally stackId={stackId} volume={output} />}</Await>;
}

function Tally({
  stackId,
  volume: { boards, measured, boardFeet, cubicMeters, mass, targetPct, missing },
}: {
  stackId: number;
  volume: StackVolume;
}) {
  const { say, formats } = useWords();
  const isMetric = useUnits() === 'metric';
  return (
    <div className={css.tally}>
      {measured > 0 && (
        <p>
          <strong>{isMetric ? formats.volume(cubicMeters) : formats.boardFeet(boardFeet)}</strong>
          {isMetric && <> · {formats.boardFeet(boardFeet)}</>} {say('stacks.tallied')}
        </p>
      )}
      {mass && (
        <p>
          <strong>{formats.weight(mass.nowKg)}</strong>{' '}
          {say('stacks.weight-then', {
            which: mass.boards === boards ? 'all' : 'some',
            boards: mass.boards,
            thenKg: mass.targetKg,
            targetPct,
          })}
        </p>
      )}
      {missing.map((why) => (
        <small key={say(why)}>{say(why)}</small>
      ))}
      <a href={hrefOf({ name: 'tally', stackId })}>{say('tally.open-by')}</a>
    </div>
  );
}
