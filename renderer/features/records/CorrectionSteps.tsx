import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { correctionParts } from '../../../shared-core/wood/moisture/correction-parts.ts';
import { Facts } from '../../ui/Facts.tsx';
import { mcOrDash, shownText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';

/** How a value was corrected: what the meter showed, what scale, temperature and species did to it, and what it came to. */
export function CorrectionSteps({
  reading: { raw, unit, isAbove, corrected, woodTempC },
}: {
  reading: Pick<JudgedReading, 'raw' | 'unit' | 'isAbove' | 'corrected' | 'woodTempC'>;
}) {
  const words = useWords();
  const { say, formats } = words;
  if (corrected.mcPct === null) return <p>{say('correction.none')}</p>;
  const parts = correctionParts({ raw, unit, corrected });
  const { fromOhmsPct, meterCheck, scale, temperature, species, ownChecks } = parts;
  // A line through the person's own checks takes the place of the species' correction.
  const isForSpecies = fromOhmsPct === null && (species !== null || ownChecks === null);
  const effect = (points: number | null) =>
    points === null ? say('correction.not-done') : formats.signedPoints(points);
  return (
    <Facts
      of={[
        [say('correction.raw'), shownText({ raw, unit, isAbove }, words)],
        [say('correction.from-ohms'), fromOhmsPct === null ? null : formats.mc(fromOhmsPct)],
        [say('correction.meter-check'), meterCheck === null ? null : effect(meterCheck)],
        [say('correction.scale'), fromOhmsPct === null ? effect(scale) : null],
        [
          woodTempC === null
            ? say(
                corrected.warnings.includes('temperature-of-air')
                  ? 'correction.temperature-of-air'
                  : 'correction.temperature-unknown',
              )
            : say('correction.temperature', { woodTempC }),
          effect(temperature),
        ],
        [say('correction.species'), isForSpecies ? effect(species) : null],
        [say('correction.own-checks'), ownChecks === null ? null : effect(ownChecks)],
        [say('reading.mc'), <strong key="mc">{mcOrDash(corrected.mcPct, formats)}</strong>],
      ]}
    />
  );
}
