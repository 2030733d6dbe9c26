import { useState } from 'react';
import { findSpecies } from '../../../shared-core/wood/species/catalogue.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { TextField } from '../../parts/Field.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../parts/Screen.tsx';
import { useSpeciesSearch } from '../../stores/species-search.ts';
import { useAnswer } from '../../useAnswer.ts';
import { EndUseForm } from './EndUseForm.tsx';
import { EndUsesTable } from './EndUsesTable.tsx';
import { SpeciesForm } from './SpeciesForm.tsx';
import { SpeciesList } from './SpeciesList.tsx';
import { emptySpeciesDraft } from './species-draft.ts';
import './species.css';

/** What is known of each wood, and what each use asks of it. */
export function SpeciesListScreen() {
  const [shown, setShown] = useState<'species-list' | 'uses'>('species-list');
  return (
    <Screen title="Woods and uses" lead="What is known of each wood, and how dry each use wants it.">
      <Choice
        label="Show"
        value={shown}
        options={[
          { value: 'species-list', label: 'Woods' },
          { value: 'uses', label: 'Uses' },
        ]}
        onValue={setShown}
      />
      {shown === 'species-list' ? <AllSpecies /> : <EndUses />}
    </Screen>
  );
}

function AllSpecies() {
  const allSpecies = useAnswer('species.list', {});
  const query = useSpeciesSearch((search) => search.query);
  const [adding, setAdding] = useState(false);
  const all = allSpecies.output ?? [];
  const byId = new Map(all.map((species) => [species.id, species]));
  const found = findSpecies(query, all).flatMap((species) => byId.get(species.id) ?? []);
  const add = () => setAdding(true);
  return (
    <Sheet title="Woods" actions={<Button onClick={add}>Add a wood</Button>}>
      <TextField
        label="Search"
        type="search"
        hint="Any name it goes by: common, botanical, or the yard’s own word."
        value={query}
        onValue={(typed) => useSpeciesSearch.setState({ query: typed })}
      />
      {allSpecies.error && <Failed sentence={allSpecies.error} again={allSpecies.again} />}
      {allSpecies.loading && <Loading what="the woods" />}
      {allSpecies.output && (
        <p role="status" className="species-count">
          {query.trim() === '' ? `${all.length} woods.` : `${found.length} of ${all.length} woods.`}
        </p>
      )}
      {allSpecies.output && found.length === 0 && (
        <EmptyState sentence={`No wood goes by “${query.trim()}” here.`}>
          <Button kind="main" onClick={add}>
            Add it
          </Button>
        </EmptyState>
      )}
      <SpeciesList allSpecies={found} />
      {adding && (
        <SpeciesForm
          title="Add a wood"
          id={null}
          start={{ ...emptySpeciesDraft, name: found.length > 0 ? '' : query }}
          allSpecies={all}
          onClose={() => setAdding(false)}
        />
      )}
    </Sheet>
  );
}

function EndUses() {
  const endUses = useAnswer('endUses.list', {});
  const [form, setForm] = useState<'closed' | 'new' | EndUse>('closed');
  return (
    <Sheet title="Uses" actions={<Button onClick={() => setForm('new')}>Add a use</Button>}>
      {endUses.error && <Failed sentence={endUses.error} again={endUses.again} />}
      {endUses.loading && <Loading what="the uses" />}
      {endUses.output && <EndUsesTable endUses={endUses.output} onChange={setForm} />}
      {form !== 'closed' && (
        <EndUseForm
          endUse={form === 'new' ? null : form}
          endUses={endUses.output ?? []}
          onClose={() => setForm('closed')}
        />
      )}
    </Sheet>
  );
}
