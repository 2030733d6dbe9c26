import type { Wood } from '../../../shared-core/wood/wood.ts';
import { missingFigures } from './missing-figures.ts';

/** What is known of a wood; for what is not, that it is not, and what cannot be said for want of it. */
export function WoodFigures({ wood }: { wood: Wood }) {
  const figures: [string, string | null][] = [
    ['Basic specific gravity', wood.basicSpecificGravity?.toString() ?? null],
    ['Shrinkage green to oven-dry, radial', pct(wood.radialPct)],
    ['Shrinkage, tangential', pct(wood.tangentialPct)],
    ['Shrinkage, volumetric', pct(wood.volumetricPct)],
    ['Change per 1 % MC, radial', wood.changeCoefficient?.radial.toString() ?? null],
    ['Change per 1 % MC, tangential', wood.changeCoefficient?.tangential.toString() ?? null],
  ];
  const missing = missingFigures(wood);
  return (
    <>
      <dl className="wood-figures">
        {figures.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd className={value === null ? 'wood-missing' : ''}>{value ?? 'not known'}</dd>
          </div>
        ))}
      </dl>
      {missing.length > 0 && (
        <ul className="wood-missing-list" aria-label="What is missing">
          {missing.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <p className="wood-note">{wood.note}</p>
    </>
  );
}

const pct = (value: number | null) => (value === null ? null : `${value} %`);
