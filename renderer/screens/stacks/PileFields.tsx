import { NumberField } from '../../parts/Field.tsx';
import type { PileDraft } from './pile-draft.ts';

/** How several boards lie in the stack: course by course, from the left, in the order of their list. */
export function PileFields({
  draft,
  firstCourse,
  hint,
  error,
  onDraft,
}: {
  draft: PileDraft;
  /** Where they begin if nobody says. */
  firstCourse: number;
  /** Where they come to lie, or what becomes of them if nobody says. */
  hint: string;
  error: string | null;
  onDraft: (draft: PileDraft) => void;
}) {
  return (
    <>
      <NumberField
        label="Boards per course"
        hint={hint}
        error={error}
        value={draft.perCourse}
        onValue={(perCourse) => onDraft({ ...draft, perCourse })}
      />
      <div className="form-grid">
        <NumberField
          label="First course"
          hint={`Counted from the bottom; left empty, ${firstCourse}.`}
          value={draft.firstCourse}
          onValue={(course) => onDraft({ ...draft, firstCourse: course })}
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
