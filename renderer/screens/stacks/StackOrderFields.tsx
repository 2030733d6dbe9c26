import { NumberField } from '../../parts/Field.tsx';
import type { StackOrderDraft } from './stack-order-draft.ts';

/** How several boards lie in the stack: course by course, from the left, in the order of their list. */
export function StackOrderFields({
  draft,
  firstLayer,
  hint,
  error,
  onDraft,
}: {
  draft: StackOrderDraft;
  /** Where they begin if nobody says. */
  firstLayer: number;
  /** Where they come to lie, or what becomes of them if nobody says. */
  hint: string;
  error: string | null;
  onDraft: (draft: StackOrderDraft) => void;
}) {
  return (
    <>
      <NumberField
        label="Boards per course"
        hint={hint}
        error={error}
        value={draft.perLayer}
        onValue={(perLayer) => onDraft({ ...draft, perLayer })}
      />
      <div className="form-grid">
        <NumberField
          label="First course"
          hint={`Counted from the bottom; left empty, ${firstLayer}.`}
          value={draft.firstLayer}
          onValue={(layer) => onDraft({ ...draft, firstLayer: layer })}
        />
        <NumberField
          label="First column"
          hint="Counted from the left; left empty, 1."
          value={draft.firstColumn}
          onValue={(firstColumn) => onDraft({ ...draft, firstColumn })}
        />
      </div>
    </>
  );
}
