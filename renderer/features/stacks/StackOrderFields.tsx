import { NumberField } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import type { StackOrderDraft } from './stack-order-draft.ts';

/** How several boards lie in the stack: layer by layer, from the left, in the order of their list. */
export function StackOrderFields({
  draft,
  firstLayer,
  hint,
  error,
  onDraft,
}: {
  draft: StackOrderDraft;
  /** Where they begin if that is left blank. */
  firstLayer: number;
  /** Where they will lie, or what happens if all is left blank. */
  hint: string;
  error: string | null;
  onDraft: (draft: StackOrderDraft) => void;
}) {
  const { say } = useWords();
  return (
    <>
      <NumberField
        label={say('stacks.per-layer')}
        hint={hint}
        error={error}
        value={draft.perLayer}
        onValue={(perLayer) => onDraft({ ...draft, perLayer })}
      />
      <div className="form-grid">
        <NumberField
          label={say('stacks.first-layer')}
          hint={say('stacks.first-layer-hint', { layer: firstLayer })}
          value={draft.firstLayer}
          onValue={(layer) => onDraft({ ...draft, firstLayer: layer })}
        />
        <NumberField
          label={say('stacks.first-column')}
          hint={say('stacks.first-column-hint')}
          value={draft.firstColumn}
          onValue={(firstColumn) => onDraft({ ...draft, firstColumn })}
        />
      </div>
    </>
  );
}
