import { type ReactNode, useState } from 'react';
import { TextField } from './Field.tsx';

/** What is looked for on a screen, and the field where it is typed. It is gone once one leaves the screen. */
export function useSearchField(words: {
  label: string;
  hint: string;
}): [typedText: string, field: ReactNode] {
  const [typed, setTyped] = useState('');
  return [typed.trim(), <TextField key="search" {...words} type="search" value={typed} onValue={setTyped} />];
}
