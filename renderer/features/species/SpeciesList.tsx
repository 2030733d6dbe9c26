import type { SpeciesRow } from '../../../shared-core/contract/requests/catalog.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useWords } from '../../words.ts';
import styles from './species.module.css';

/** Species by their groups, like Maples, in the order in which the groups are first met; each leads to its page. */
export function SpeciesList({ allSpecies }: { allSpecies: readonly SpeciesRow[] }) {
  const { say } = useWords();
  const groups = new Map<string, SpeciesRow[]>();
  for (const species of allSpecies)
    groups.set(species.group, [...(groups.get(species.group) ?? []), species]);
  return (
    <ul className={styles.groups}>
      {[...groups].map(([group, members]) => (
        <li key={group}>
          <h3 translate="no">{group}</h3>
          <ul>
            {members.map(({ id, name, botanicalName, linear, curveId, builtIn }) => (
              <li key={id}>
                <a href={hrefOf({ name: 'species', id })}>
                  <strong translate="no">{name}</strong> <i translate="no">{botanicalName}</i>
                  {linear === null && curveId === null && <small>{say('species.temperature-only')}</small>}
                  {!builtIn && <span className={styles.own}>{say('species.own')}</span>}
                </a>
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}
