import { useState } from 'react';
import type { Cut } from '../../../shared-core/contract/archive.ts';
import { pieceSchema } from '../../../shared-core/contract/requests/life.ts';
import { problemOfField } from '../../../shared-core/contract/validation.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { afterPress } from '../../form/after-press.ts';
import { TextField } from '../../form/Field.tsx';
import { fieldsMarked } from '../../form/FormDialog.tsx';
import { BoardLengthField, LengthField } from '../../form/MeasureFields.tsx';
import { useWords } from '../../words.ts';

interface Piece {
  code: string;
  /** Across the cuts; null for blank, NaN where it cannot be read. */
  sizeMm: number | null;
}

/** The pieces of a board while they are typed: each an ID, and the one size that the cut changed. */
export function usePieces(board: BoardRow, how: Cut) {
  const { say } = useWords();
  const [all, setAll] = useState<readonly Piece[]>([]);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [wasSaved, setWasSaved] = useState(false);
  const size = how === 'ripped' ? 'widthMm' : 'lengthMm';
  const asGiven = ({ code, sizeMm }: Piece) => ({
    code,
    widthMm: board.widthMm,
    lengthMm: board.lengthMm,
    [size]: sizeMm,
  });
  const change = (index: number, changed: Partial<Piece>) =>
    setAll((before) => before.map((piece, at) => (at === index ? { ...piece, ...changed } : piece)));

  return {
    how,
    all,
    count: all.length,
    /** So many pieces, with IDs that are free; what was typed of sizes stays. */
    propose: (codes: readonly string[]): void =>
      setAll((before) => codes.map((code, index) => ({ code, sizeMm: before[index]?.sizeMm ?? null }))),
    /** Shows what is wrong at every field, left or not. */
    show: (): void => setWasSaved(true),
    /** @throws Refusal where something is wrong, which the fields then show */
    read: () => {
      const checked = all.map((piece) => pieceSchema.safeParse(asGiven(piece)));
      return checked.map(({ success, data }) => {
        if (!success) throw fieldsMarked();
        return data;
      });
    },
    field: (index: number, key: keyof Piece) => {
      const name = key === 'code' ? key : size;
      const piece = all[index] as Piece;
      const issue = pieceSchema.safeParse(asGiven(piece)).error?.issues.find(({ path }) => path[0] === name);
      const isShown = wasSaved || left.has(`${index} ${name}`);
      return {
        error: issue && isShown ? say(problemOfField(name, issue)) : null,
        onBlur: () => afterPress(() => setLeft((before) => new Set(before).add(`${index} ${name}`))),
      };
    },
    change,
  };
}

/** An ID and a size for each piece. */
export function PieceFields({ pieces }: { pieces: ReturnType<typeof usePieces> }) {
  const { say } = useWords();
  const { how, all, change, field } = pieces;
  const Size = how === 'ripped' ? LengthField : BoardLengthField;
  return all.map((piece, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a piece is its place in the list, and its ID is typed
    <div key={index} className="form-grid">
      <TextField
        label={say('life.piece-id', { rawNumber: index + 1 })}
        maxLength={16}
        value={piece.code}
        {...field(index, 'code')}
        onValue={(code) => change(index, { code: code.toUpperCase() })}
      />
      <Size
        label={say(how === 'ripped' ? 'life.piece-width' : 'life.piece-length', { rawNumber: index + 1 })}
        hint={index === 0 ? say('life.piece-optional') : undefined}
        value={piece.sizeMm}
        {...field(index, 'sizeMm')}
        onValue={(sizeMm) => change(index, { sizeMm })}
      />
    </div>
  ));
}
