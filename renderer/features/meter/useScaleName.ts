import type { MeterScale } from '../../../shared-core/wood/moisture/corrected.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { useQuery } from '../../data/useQuery.ts';
import { useWords } from '../../words.ts';
import { speciesOfScale } from './profile-draft.ts';

/** What a meter is set to, in words. */
export function useScaleName(): (scale: MeterScale) => string {
  const { say, formats } = useWords();
  const { output } = useQuery('species.list', {});
  return (scale) =>
    scale.kind === 'species'
      ? formats.named(
          speciesOfScale(scale, output ?? [])?.name ?? resistanceCurves.get(scale.curveId ?? '')?.name ?? '…',
        )
      : say(`meter-profile.is-${scale.kind}`);
}
