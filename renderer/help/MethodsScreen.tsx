import { useEffect, useRef } from 'react';
import { methodParts } from '../../shared-core/methods/methods.ts';
import type { EndUse } from '../../shared-core/wood/species/end-use.ts';
import type { Species } from '../../shared-core/wood/species/species.ts';
import { useQuery } from '../data/useQuery.ts';
import { useSearchField } from '../form/useSearchField.tsx';
import { hrefOf } from '../stores/navigation.ts';
import { Await } from '../ui/Await.tsx';
import { Button } from '../ui/Button.tsx';
import { EmptyState, Screen, Sheet } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';
import { MethodPartSheet } from './MethodPartSheet.tsx';
import css from './methods.module.css';

/** Every formula, prior, limit and source, in parts with headings that can be searched and printed. */
export function MethodsScreen({ part }: { part: string | null }) {
  const { say } = useWords();
  const species = useQuery('species.list', {});
  const endUses = useQuery('endUses.list', {});
  return (
    <Screen
      title={say('methods.title')}
      lead={say('methods.lead')}
      actions={<Button onClick={() => window.print()}>{say('methods.print')}</Button>}
    >
      <Await of={[species, endUses]}>
        {(allSpecies, allEndUses) => <Parts species={allSpecies} endUses={allEndUses} part={part} />}
      </Await>
    </Screen>
  );
}

function Parts({
  species,
  endUses,
  part,
}: {
  species: readonly Species[];
  endUses: readonly EndUse[];
  part: string | null;
}) {
  const { say } = useWords();
  const [typedText, searchField] = useSearchField({
    label: say('methods.find'),
    hint: say('methods.find-hint'),
  });
  const words = typedText.toLowerCase();
  const shown = methodParts(species, endUses).filter(({ title, says }) =>
    [title, ...says].some((each) => say(each).toLowerCase().includes(words)),
  );
  const aimed = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (part !== null) aimed.current?.scrollIntoView();
    aimed.current?.focus();
  }, [part]);
  return (
    <>
      <Sheet title={say('methods.contents')}>
        {searchField}
        <ul className={css.contents}>
          {shown.map(({ id, title }) => (
            <li key={id}>
              <a href={hrefOf({ name: 'methods', part: id })}>{say(title)}</a>
            </li>
          ))}
        </ul>
      </Sheet>
      {shown.length === 0 && <EmptyState sentence={say('methods.none', { typedText })} />}
      {shown.map((each) => (
        <MethodPartSheet key={each.id} part={each} ref={each.id === part ? aimed : null} />
      ))}
    </>
  );
}
