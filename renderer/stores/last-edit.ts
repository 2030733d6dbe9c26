import { create } from 'zustand';
import type { RequestOutput } from '../../shared-core/contract/requests.ts';
import { useYard } from './yard.ts';

/** An edit of several boards that can still be undone. */
export interface LastEdit extends RequestOutput<'boards.editTogether'> {
  /** The stack in whose list it was made; null for the list of all boards. */
  stackId: number | null;
  /** Where they were moved to, where nothing else was changed. */
  movedTo: number | null;
}

/** The last one in this window: its Undo is still there after going elsewhere and back, until another or a dismissal. */
export const useLastEdit = create<{ edit: LastEdit | null; yard: string | null }>()(() => ({
  edit: null,
  yard: null,
}));

const yardShown = (): string | null => useYard.getState().info?.uuid ?? null;

export function rememberEdit(edit: LastEdit): void {
  useLastEdit.setState({ edit, yard: yardShown() });
}

export function forgetEdit(): void {
  useLastEdit.setState({ edit: null });
}

/** The one to show in the list of a stack, or in that of all boards, which shows any. */
export function useLastEditIn(stackId: number | null): LastEdit | null {
  const { edit, yard } = useLastEdit();
  const isHere = edit !== null && (stackId === null || edit.stackId === stackId);
  return isHere && yard === yardShown() ? edit : null;
}
