import { create } from 'zustand';

/** Sentences that a person needs no more until the window is opened again. */
export const useDismissed = create<{ sentences: readonly string[] }>()(() => ({ sentences: [] }));

export function dismissForNow(sentence: string): void {
  useDismissed.setState(({ sentences }) => ({ sentences: [...sentences, sentence] }));
}
