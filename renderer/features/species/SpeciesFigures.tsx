import type { Species } from '../../../shared-core/wood/species/species.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { useWords } from '../../words.ts';
import { missingFigures } from './missing-figures.ts';

/** What is known about a species, and for what is not known, what that prevents. */
export function SpeciesFigures({ species }: { species: Species }) {
  const words = useWords();
  const { say } = words;
  const missing = missingFigures(species);
  return (
    <>
      <dl className="species-figures">
        {figuresOf(species, words).map(({ code, value }) => (
          <div key={code}>
            <dt>{say(code)}</dt>
            <dd className={value === null ? 'species-missing' : ''}>{value ?? say('species.not-known')}</dd>
          </div>
        ))}
      </dl>
      {missing.length > 0 && (
        <ul className="species-missing-list" aria-label={say('species.missing')}>
          {missing.map((each) => (
            <li key={each.code}>{say(each)}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function figuresOf(species: Species, { say, formats }: Words) {
  const pct = (value: number | null) => (value === null ? null : formats.rawPercent(value));
  const perPoint = (value: number | undefined) =>
    value === undefined ? null : say('species.per-point', { rawShare: value });
  const { basicSpecificGravity, changeCoefficient } = species;
  return [
    {
      code: 'species.specific-gravity',
      value: basicSpecificGravity === null ? null : formats.raw(basicSpecificGravity),
    },
    { code: 'species.radial', value: pct(species.radialPct) },
    { code: 'species.tangential', value: pct(species.tangentialPct) },
    { code: 'species.volumetric', value: pct(species.volumetricPct) },
    { code: 'species.change-radial', value: perPoint(changeCoefficient?.radial) },
    { code: 'species.change-tangential', value: perPoint(changeCoefficient?.tangential) },
  ] as const;
}
