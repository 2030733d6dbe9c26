import type { QuestionableMeter } from '../../../shared-core/contract/meter-checks.ts';
import { useWords } from '../../words.ts';
import { offOf } from './check-sentence.ts';

/** That a meter of the round was off when it was checked, short enough to be read from two meters away. */
export function OffMeterAfar({ offMeters }: { offMeters: readonly QuestionableMeter[] }) {
  const { say } = useWords();
  return offMeters.map(({ check, unit }) => {
    const off = Math.abs(offOf(check, unit));
    return (
      <p key={check.id}>
        {unit === 'pct'
          ? say('meter-check.far-off.pct', { offPoints: off })
          : say('meter-check.far-off.ohm', { offSharePct: 100 * off })}
      </p>
    );
  });
}
