import { useState } from 'react';
import type { Use } from '../../../shared-core/probing/assessment.ts';
import { findWoods } from '../../../shared-core/wood/catalogue.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { TextField } from '../../parts/Field.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../parts/Screen.tsx';
import { useWoodSearch } from '../../stores/wood-search.ts';
import { useAnswer } from '../../useAnswer.ts';
import { UseForm } from './UseForm.tsx';
import { UsesTable } from './UsesTable.tsx';
import { WoodForm } from './WoodForm.tsx';
import { WoodList } from './WoodList.tsx';
import { emptyWoodDraft } from './wood-draft.ts';
import './woods.css';

/** What is known of each wood, and what each use asks of it. */
export function WoodsScreen() {
  const [shown, setShown] = useState<'woods' | 'uses'>('woods');
  return (
    <Screen title="Woods and uses" lead="What is known of each wood, and how dry each use wants it.">
      <Choice
        label="Show"
        value={shown}
        options={[
          { value: 'woods', label: 'Woods' },
          { value: 'uses', label: 'Uses' },
        ]}
        onValue={setShown}
      />
      {shown === 'woods' ? <Woods /> : <Uses />}
    </Screen>
  );
}

function Woods() {
  const woods = useAnswer('woods.list', {});
  const query = useWoodSearch((search) => search.query);
  const [adding, setAdding] = useState(false);
  const all = woods.output ?? [];
  const byId = new Map(all.map((wood) => [wood.id, wood]));
  const found = findWoods(query, all).flatMap((wood) => byId.get(wood.id) ?? []);
  const add = () => setAdding(true);
  return (
    <Sheet title="Woods" actions={<Button onClick={add}>Add a wood</Button>}>
      <TextField
        label="Search"
        type="search"
        hint="Any name it goes by: common, botanical, or the yard’s own word."
        value={query}
        onValue={(typed) => useWoodSearch.setState({ query: typed })}
      />
      {woods.error && <Failed sentence={woods.error} again={woods.again} />}
      {woods.loading && <Loading what="the woods" />}
      {woods.output && (
        <p role="status" className="wood-count">
          {query.trim() === '' ? `${all.length} woods.` : `${found.length} of ${all.length} woods.`}
        </p>
      )}
      {woods.output && found.length === 0 && (
        <EmptyState sentence={`No wood goes by “${query.trim()}” here.`}>
          <Button kind="main" onClick={add}>
            Add it
          </Button>
        </EmptyState>
      )}
      <WoodList woods={found} />
      {adding && (
        <WoodForm
          title="Add a wood"
          id={null}
          start={{ ...emptyWoodDraft, name: found.length > 0 ? '' : query }}
          woods={all}
          onClose={() => setAdding(false)}
        />
      )}
    </Sheet>
  );
}

function Uses() {
  const uses = useAnswer('uses.list', {});
  const [form, setForm] = useState<'closed' | 'new' | Use>('closed');
  return (
    <Sheet title="Uses" actions={<Button onClick={() => setForm('new')}>Add a use</Button>}>
      {uses.error && <Failed sentence={uses.error} again={uses.again} />}
      {uses.loading && <Loading what="the uses" />}
      {uses.output && <UsesTable uses={uses.output} onChange={setForm} />}
      {form !== 'closed' && (
        <UseForm
          use={form === 'new' ? null : form}
          uses={uses.output ?? []}
          onClose={() => setForm('closed')}
        />
      )}
    </Sheet>
  );
}
