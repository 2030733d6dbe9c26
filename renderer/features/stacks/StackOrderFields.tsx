import { positionInStack, stackOrderAnswerSchema } from '../../../shared-core/contract/stack-order.ts';
import { NumberField } from '../../form/Field.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

/** How several boards lie, all blank at first; `firstLayer` is where they begin if that is left blank. */
export function useStackOrder(boards: number, firstLayer: number, mayBeBlank: boolean) {
  const nothingYet = { perLayer: null, firstLayer: null, firstColumn: null };
  return {
    boards,
    firstLayer,
    ...useDraft(stackOrderAnswerSchema(boards, firstLayer, mayBeBlank), nothingYet),
  };
}

/** How several boards lie in the stack: layer by layer, from the left, in the order of their list. */
export function StackOrderFields({
  order: { boards, firstLayer, made, field },
  blankHint,
}: {
  order: ReturnType<typeof useStackOrder>;
  /** What happens if all is left blank. */
  blankHint: string;
}) {
  const { say } = useWords();
  const topLayer = made && positionInStack(made, boards - 1).layer;
  return (
    <>
      <NumberField
        label={say('stacks.per-layer')}
        hint={
          !made || !topLayer
            ? blankHint
            : topLayer === made.firstLayer
              ? say('stacks.in-one-layer', { layer: topLayer })
              : say('stacks.in-layers', { firstLayer: made.firstLayer, topLayer })
        }
        {...field('perLayer')}
      />
      <div className="form-grid">
        <NumberField
          label={say('stacks.first-layer')}
          hint={say('stacks.first-layer-hint', { layer: firstLayer })}
          {...field('firstLayer')}
        />
        <NumberField
          label={say('stacks.first-column')}
          hint={say('stacks.first-column-hint')}
          {...field('firstColumn')}
        />
      </div>
    </>
  );
}
