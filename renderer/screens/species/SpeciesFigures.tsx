import type { Species } from '../../../shared-core/wood/species/species.ts';
import { missingFigures } from './missing-figures.ts';

/** What is known of a wood; for what is not, that it is not, and what cannot be said for want of it. */
export function SpeciesFigures({ species }: { species: Species }) {
  const figures: [string, string | null][] = [
    ['Basic specific gravity', species.basicSpecificGravity?.toString() ?? null],
    ['Shrinkage green to oven-dry, radial', pct(species.radialPct)],
    ['Shrinkage, tangential', pct(species.tangentialPct)],
    ['Shrinkage, volumetric', pct(species.volumetricPct)],
    ['Change per 1 % MC, radial', species.changeCoefficient?.radial.toString() ?? null],
    ['Change per 1 % MC, tangential', species.changeCoefficient?.tangential.toString() ?? null],
  ];
  const missing = missingFigures(species);
  return (
    <>
      <dl className="species-figures">
        {figures.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd className={value === null ? 'species-missing' : ''}>{value ?? 'not known'}</dd>
          </div>
        ))}
      </dl>
      {missing.length > 0 && (
        <ul className="species-missing-list" aria-label="What is missing">
          {missing.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <p className="species-note">{species.note}</p>
    </>
  );
}

const pct = (value: number | null) => (value === null ? null : `${value} %`);
