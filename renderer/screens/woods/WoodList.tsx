import type { Wood } from '../../../shared-core/wood/wood.ts';
import { hrefOf } from '../../stores/navigation.ts';

/** Woods one below the other; each leads to its page. */
export function WoodList({ woods }: { woods: readonly (Wood & { builtIn: boolean })[] }) {
  return (
    <ul className="wood-list">
      {woods.map((wood) => (
        <li key={wood.id}>
          <a className="wood" href={hrefOf({ name: 'wood', id: wood.id })}>
            <span className="wood-name">{wood.name}</span>
            <span className="wood-botanical">{wood.botanicalName}</span>
            <span className="wood-group">{wood.group}</span>
            <span className="wood-correction">
              {wood.linear || wood.curveId ? '● species and temperature' : '○ temperature only'}
            </span>
            {!wood.builtIn && <span className="wood-own">own</span>}
          </a>
        </li>
      ))}
    </ul>
  );
}
