import { type RefObject, useEffect, useRef, useState } from 'react';

/** A part of the page that something lies over takes nothing. */
function isOnTop(part: HTMLElement | null): boolean {
  const over = [...document.querySelectorAll('[role=dialog], [role=alertdialog]')].at(-1);
  return part !== null && (over?.contains(part) ?? true);
}

/** A text that is pasted where one is typed is meant for there, whatever else it comes with. */
const isForField = ({ target, clipboardData }: ClipboardEvent): boolean =>
  target instanceof HTMLElement &&
  target.closest('input, textarea, [contenteditable]') !== null &&
  clipboardData?.types.includes('text/plain') === true;

const hasFiles = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') ?? false;

/**
 * Takes pictures that are pasted, and files that are dropped, anywhere on the page that a part is on.
 * @returns whether files are held over the page
 */
export function useGivenFiles(
  part: RefObject<HTMLElement | null>,
  onFiles: (files: readonly File[]) => void,
): boolean {
  const [isOver, setOver] = useState(false);
  const newest = useRef(onFiles);
  useEffect(() => {
    newest.current = onFiles;
  });
  useEffect(() => {
    const listening = new AbortController();
    const { signal } = listening;
    const onPaste = (event: ClipboardEvent): void => {
      const images = [...(event.clipboardData?.files ?? [])].filter(({ type }) => type.startsWith('image/'));
      if (images.length === 0 || isForField(event) || !isOnTop(part.current)) return;
      event.preventDefault();
      newest.current(images);
    };
    const onDrag = (event: DragEvent): void => {
      if (!hasFiles(event)) return;
      // Else the browser would open the file in place of the window.
      event.preventDefault();
      setOver(isOnTop(part.current));
    };
    const onLeave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent): void => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(false);
      if (isOnTop(part.current)) newest.current([...(event.dataTransfer?.files ?? [])]);
    };
    document.addEventListener('paste', onPaste, { signal });
    document.addEventListener('dragover', onDrag, { signal });
    document.addEventListener('dragleave', onLeave, { signal });
    document.addEventListener('drop', onDrop, { signal });
    return () => listening.abort();
  }, [part]);
  return isOver;
}
