import type { StackVolume as Volume } from '../../../shared-core/contract/stack-volume.ts';
import { useQuery } from '../../data/useQuery.ts';
import { useUnits } from '../../stores/settings.ts';
import { Failed, Loading, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import './stack-volume.css';

/** What a stack amounts to: its volume as the trade tallies it, and its weight now and at its target. */
export function StackVolume({ stackId }: { stackId: number }) {
  const volume = useQuery('stacks.volume', { id: stackId });
  const { say } = useWords();
  return (
    <Sheet title={say('stacks.volume')}>
      {volume.error && <Failed sentence={volume.error} again={volume.again} />}
      {volume.loading && <Loading />}
      {volume.output && <Totals volume={volume.output} />}
    </Sheet>
  );
}

function Totals({ volume }: { volume: Volume }) {
  const { say, formats } = useWords();
  const units = useUnits();
  const { mass, targetPct, endUseName } = volume;
  const facts: [string, string][] = [];
  if (volume.measured > 0) {
    facts.push([say('stacks.board-feet-tallied'), formats.number(volume.boardFeet)]);
    if (units === 'metric') {
      facts.push([say('stacks.cubic-meters-tallied'), formats.volume(volume.cubicMeters)]);
    }
  }
  if (mass) {
    const isOfAll = mass.boards === volume.boards;
    facts.push(
      [
        isOfAll ? say('stacks.weight-now') : say('stacks.weight-now-of', { boards: mass.boards }),
        formats.weight(mass.nowKg),
      ],
      [say('stacks.weight-at', { targetPct, endUseName }), formats.weight(mass.targetKg)],
    );
  }
  return (
    <>
      {facts.length > 0 && (
        <dl className="stack-volume">
          {facts.map(([label, value]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      {volume.missing.length > 0 && (
        <ul className="stack-volume-missing">
          {volume.missing
            .map((missing) => say(missing))
            .map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
        </ul>
      )}
    </>
  );
}
