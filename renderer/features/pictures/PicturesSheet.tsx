import type { ComponentProps } from 'react';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { Pictures } from './Pictures.tsx';

/** Pictures as a part of a page. */
export function PicturesSheet(of: ComponentProps<typeof Pictures>) {
  const { say } = useWords();
  return (
    <Sheet title={say('pictures.title')}>
      <Pictures {...of} />
    </Sheet>
  );
}
