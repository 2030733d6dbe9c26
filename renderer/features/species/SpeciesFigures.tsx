import { missingFigures } from '../../../shared-core/wood/species/missing-figures.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { Facts } from '../../ui/Facts.tsx';
import { useWords } from '../../words.ts';
import styles from './species.module.css';

/** What is known about a species, and for what is not known, what that prevents. */
export function SpeciesFigures({ species }: { species: Species }) {
  const { say, formats } = useWords();
  const missing = missingFigures(species);
  const { basicSpecificGravity, changeCoefficient: change } = species;
  const percentOf = (pct: number | null) => (pct === null ? null : formats.rawPercent(pct));
  return (
    <>
      <Facts
        of={[
          [say('species.specific-gravity'), basicSpecificGravity && formats.raw(basicSpecificGravity)],
          [say('species.radial'), percentOf(species.radialPct)],
          [say('species.tangential'), percentOf(species.tangentialPct)],
          [say('species.volumetric'), percentOf(species.volumetricPct)],
          [say('species.change-radial'), change && formats.raw(change.radial)],
          [say('species.change-tangential'), change && formats.raw(change.tangential)],
        ]}
      />
      {missing.length > 0 && (
        <ul className={`column ${styles.missing}`} aria-label={say('species.missing')}>
          {missing.map((each) => (
            <li key={each.code}>{say(each)}</li>
          ))}
        </ul>
      )}
    </>
  );
}
