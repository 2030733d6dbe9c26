import type { Species } from '../../../shared-core/wood/species/species.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useWords } from '../../words.ts';

/** Species one below the other; each leads to its page. */
export function SpeciesList({ allSpecies }: { allSpecies: readonly (Species & { builtIn: boolean })[] }) {
  const { say } = useWords();
  return (
    <ul className="species-list">
      {allSpecies.map((species) => (
        <li key={species.id}>
          <a className="species" href={hrefOf({ name: 'species', id: species.id })}>
            <span className="species-name" translate="no">
              {species.name}
            </span>
            <span className="species-botanical" translate="no">
              {species.botanicalName}
            </span>
            <span className="species-group" translate="no">
              {species.group}
            </span>
            <span className="species-correction">
              {species.linear || species.curveId
                ? `● ${say('species.corrected')}`
                : `○ ${say('species.temperature-only')}`}
            </span>
            {!species.builtIn && <span className="species-own">{say('species.own')}</span>}
          </a>
        </li>
      ))}
    </ul>
  );
}
