import { type ReactNode, useEffect, useId, useRef } from 'react';
import './dialog.css';

/**
 * A question over the screen. The browser's own dialog: keeps the focus inside, closes on Escape, gives the focus back.
 * Drawn only while open, so its fields start fresh each time.
 */
export function Dialog({
  title,
  onClose,
  children,
}: {
  title: string;
  onClose: () => void;
  children: ReactNode;
}) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    const before = document.activeElement;
    element?.showModal();
    return () => {
      element?.close();
      // The browser gives the focus back only while the dialog is on the page, which React has taken it off by now.
      if (before instanceof HTMLElement) before.focus({ preventScroll: true });
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      className="dialog"
      aria-labelledby={id}
      onCancel={(event) => {
        // The parent takes the dialog off the screen; closing it here too would leave the two out of step.
        event.preventDefault();
        onClose();
      }}
      // Keys typed into a dialog are not shortcuts of the screen behind it.
      onKeyDown={(event) => event.stopPropagation()}
    >
      <h2 id={id}>{title}</h2>
      {children}
    </dialog>
  );
}
