import type { Wood } from '../../../shared-core/wood/wood.ts';
import { Actions, Button } from '../../parts/Button.tsx';
import { correctionWords } from './correction-words.ts';

/** Woods one below the other; each opens to its figures. */
export function WoodList({
  woods,
  onChange,
  onDerive,
}: {
  woods: readonly (Wood & { builtIn: boolean })[];
  onChange: (wood: Wood) => void;
  onDerive: (wood: Wood) => void;
}) {
  return (
    <ul className="wood-list">
      {woods.map((wood) => (
        <li key={wood.id}>
          <details className="wood">
            <summary>
              <span className="wood-name">{wood.name}</span>
              <span className="wood-botanical">{wood.botanicalName}</span>
              <span className="wood-group">{wood.group}</span>
              <span className="wood-correction">
                {wood.linear || wood.curveId ? '● species and temperature' : '○ temperature only'}
              </span>
              {!wood.builtIn && <span className="wood-own">own</span>}
            </summary>
            <WoodFigures wood={wood} />
            <Actions>
              <Button onClick={() => onDerive(wood)}>Add a wood like this</Button>
              <Button onClick={() => onChange(wood)}>Change</Button>
            </Actions>
          </details>
        </li>
      ))}
    </ul>
  );
}

/** What is known of a wood, and for what is not, that it is not. */
function WoodFigures({ wood }: { wood: Wood }) {
  const figures: [string, string | null][] = [
    ['Also called', wood.aliases.join(', ') || null],
    ['Basic specific gravity', wood.basicSpecificGravity?.toString() ?? null],
    ['Shrinkage green to oven-dry, radial', pct(wood.radialPct)],
    ['Shrinkage, tangential', pct(wood.tangentialPct)],
    ['Shrinkage, volumetric', pct(wood.volumetricPct)],
    ['Change per 1 % MC, radial', wood.changeCoefficient?.radial.toString() ?? null],
    ['Change per 1 % MC, tangential', wood.changeCoefficient?.tangential.toString() ?? null],
  ];
  return (
    <>
      <p>
        <strong>Readings are corrected for:</strong> {correctionWords(wood)}.
      </p>
      <dl className="wood-figures">
        {figures.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd className={value === null ? 'wood-missing' : ''}>{value ?? 'not known'}</dd>
          </div>
        ))}
      </dl>
      <p className="wood-note">{wood.note}</p>
    </>
  );
}

const pct = (value: number | null) => (value === null ? null : `${value} %`);
