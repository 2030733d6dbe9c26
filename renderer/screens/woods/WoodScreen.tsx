import { useState } from 'react';
import type { Wood } from '../../../shared-core/wood/wood.ts';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../parts/Screen.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useAnswer } from '../../useAnswer.ts';
import { correctionWords } from './correction-words.ts';
import { OvenChecksSection } from './OvenChecksSection.tsx';
import { WoodFigures } from './WoodFigures.tsx';
import { WoodForm } from './WoodForm.tsx';
import { draftDerivedFrom, draftOfWood } from './wood-draft.ts';
import './woods.css';

/** Everything known of one wood, and the person's own oven-dry checks of it. */
export function WoodScreen({ id }: { id: string }) {
  const woods = useAnswer('woods.list', {});
  const wood = woods.output?.find((each) => each.id === id);
  if (wood && woods.output) return <Found wood={wood} woods={woods.output} />;
  return (
    <Screen title="Wood">
      {woods.error && <Failed sentence={woods.error} again={woods.again} />}
      {woods.loading && <Loading what="the wood" />}
      {woods.output && (
        <EmptyState sentence="There is no such wood in this yard.">
          <ButtonLink kind="main" href={hrefOf({ name: 'woods' })}>
            Go to the woods
          </ButtonLink>
        </EmptyState>
      )}
    </Screen>
  );
}

function Found({ wood, woods }: { wood: Wood & { builtIn: boolean }; woods: readonly Wood[] }) {
  const [open, setOpen] = useState<'nothing' | 'change' | 'derive'>('nothing');
  const close = () => setOpen('nothing');
  return (
    <Screen
      title={wood.name}
      lead={
        <>
          {wood.botanicalName && <i>{wood.botanicalName}, </i>}
          {wood.group}
          {!wood.builtIn && ' · your own figures'}
        </>
      }
      actions={
        <>
          <ButtonLink href={hrefOf({ name: 'woods' })}>All woods</ButtonLink>
          <Button onClick={() => setOpen('derive')}>Add a wood like this</Button>
          <Button onClick={() => setOpen('change')}>Change</Button>
        </>
      }
    >
      <Sheet title="What is known of it">
        {wood.aliases.length > 0 && <p>Also called {wood.aliases.join(', ')}.</p>}
        <p>
          <strong>Published correction:</strong> {correctionWords(wood)}.
        </p>
        <WoodFigures wood={wood} />
      </Sheet>
      <OvenChecksSection wood={wood} />
      {open === 'change' && (
        <WoodForm
          title={`Change ${wood.name}`}
          id={wood.id}
          start={draftOfWood(wood)}
          woods={woods}
          onClose={close}
        />
      )}
      {open === 'derive' && (
        <WoodForm
          title={`Add a wood like ${wood.name}`}
          id={null}
          start={draftDerivedFrom(wood)}
          woods={woods}
          onClose={close}
        />
      )}
    </Screen>
  );
}
