import { useState } from 'react';
import type { EndUseRow, SpeciesRow } from '../../../shared-core/contract/requests/catalog.ts';
import { findSpecies } from '../../../shared-core/wood/species/find-species.ts';
import type { Formats } from '../../../shared-core/words/formats.ts';
import { useQuery } from '../../data/useQuery.ts';
import { TextField } from '../../form/Field.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useSpeciesSearch } from '../../stores/species-search.ts';
import { Await } from '../../ui/Await.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState, Screen, Sheet } from '../../ui/Screen.tsx';
import { Tabs } from '../../ui/Tabs.tsx';
import { useWords } from '../../words.ts';
import { DamagedMark } from '../recovery/DamagedMark.tsx';
import { EndUseForm } from './EndUseForm.tsx';
import { EndUsesTable } from './EndUsesTable.tsx';
import { SpeciesForm } from './SpeciesForm.tsx';
import styles from './species.module.css';
import { newSpeciesDraft } from './species-draft.ts';

/** What is known about each species, and the target of each use. */
export function SpeciesListScreen() {
  const { say } = useWords();
  return (
    <Screen title={say('nav.species')}>
      <Tabs
        label={say('nav.species')}
        tabs={[
          { id: 'species', title: say('nav.species'), panel: () => <AllSpecies /> },
          { id: 'uses', title: say('species.uses'), panel: () => <EndUses /> },
        ]}
      />
    </Screen>
  );
}

function AllSpecies() {
  const { say, formats } = useWords();
  const allSpecies = useQuery('species.list', {});
  const query = useSpeciesSearch((search) => search.query);
  const [adding, setAdding] = useState(false);
  const add = () => setAdding(true);
  return (
    <Sheet title={say('nav.species')} actions={<Button onClick={add}>{say('species.add')}</Button>}>
      <TextField
        label={say('species.search')}
        type="search"
        hint={say('species.search-hint')}
        value={query}
        onValue={(typed) => useSpeciesSearch.setState({ query: typed })}
      />
      <Await of={[allSpecies]}>
        {(all) => {
          const found = speciesFound(query, all, formats);
          return (
            <>
              <p role="status" className="soft">
                {say('species.found', { found: found.length, all: all.length })} {say('species.corrected')}
              </p>
              {found.length === 0 && (
                <EmptyState sentence={say('species.none-found', { typedName: query.trim() })}>
                  <Button kind="main" onClick={add}>
                    {say('species.add-it')}
                  </Button>
                </EmptyState>
              )}
              <SpeciesList allSpecies={found} />
              {adding && (
                <SpeciesForm
                  title={say('species.add')}
                  species={null}
                  start={newSpeciesDraft(found.length > 0 ? '' : query)}
                  onClose={() => setAdding(false)}
                />
              )}
            </>
          );
        }}
      </Await>
    </Sheet>
  );
}

/** Species by their groups, like Maples, in the order in which the groups are first met; each leads to its page. */
function SpeciesList({ allSpecies }: { allSpecies: readonly SpeciesRow[] }) {
  const { say, formats } = useWords();
  const groups = new Map<string, SpeciesRow[]>();
  for (const species of allSpecies)
    groups.set(species.group, [...(groups.get(species.group) ?? []), species]);
  return (
    <ul className={styles.groups}>
      {[...groups].map(([group, members]) => (
        <li key={group}>
          <h3 translate="no">{formats.named(group)}</h3>
          <ul>
            {members.map(({ id, name, botanicalName, linear, curveId, builtIn, isDamaged }) => (
              <li key={id}>
                <a href={hrefOf({ name: 'species', id })}>
                  <strong translate="no">{formats.named(name)}</strong>{' '}
                  <i className="soft" translate="no">
                    {botanicalName}
                  </i>
                  {linear === null && curveId === null && <small>{say('species.temperature-only')}</small>}
                  {!builtIn && <span className={styles.own}>{say('species.own')}</span>}
                  {isDamaged && <DamagedMark />}
                </a>
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}

/** The best match first; without a search by the names of their groups, and in each by their own. */
function speciesFound(query: string, all: readonly SpeciesRow[], { named }: Formats): SpeciesRow[] {
  const byId = new Map(all.map((species) => [species.id, species]));
  const found = findSpecies(query, all, named).flatMap(({ id }) => byId.get(id) ?? []);
  if (query.trim() !== '') return found;
  return found.sort(
    (a, b) => named(a.group).localeCompare(named(b.group)) || named(a.name).localeCompare(named(b.name)),
  );
}

function EndUses() {
  const { say } = useWords();
  const endUses = useQuery('endUses.list', {});
  const [form, setForm] = useState<'closed' | 'new' | EndUseRow>('closed');
  return (
    <Sheet
      title={say('species.uses')}
      actions={<Button onClick={() => setForm('new')}>{say('use.add')}</Button>}
    >
      <Await of={[endUses]}>
        {(all) => (
          <>
            <EndUsesTable endUses={all} onEdit={setForm} />
            {form !== 'closed' && (
              <EndUseForm endUse={form === 'new' ? null : form} onClose={() => setForm('closed')} />
            )}
          </>
        )}
      </Await>
    </Sheet>
  );
}
