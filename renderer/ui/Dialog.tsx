import { type ReactNode, useEffect, useRef } from 'react';
import { Heading, Modal, ModalOverlay, Dialog as Question } from 'react-aria-components';
import styles from './dialog.module.css';

/**
 * A question over the screen: keeps the focus inside, closes on Escape, and gives the focus back; where what opened it
 * is gone, `useFocusKept` finds where. Drawn only while open, so its fields start fresh each time.
 */
export function Dialog({
  title,
  isWide = false,
  onClose,
  children,
}: {
  title: string;
  /** As wide as the window, for pictures. */
  isWide?: boolean;
  onClose: () => void;
  children: ReactNode;
}) {
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys typed into a dialog are not shortcuts of the screen behind it. It is drawn elsewhere on the page.
    <div hidden onKeyDown={(event) => event.stopPropagation()}>
      <ModalOverlay isOpen onOpenChange={onClose} className={styles.veil!}>
        <Modal className={isWide ? `${styles.sheet} ${styles.wide}` : styles.sheet!}>
          <Question className={`column ${styles.dialog}`}>
            <Heading slot="title">{title}</Heading>
            <FocusFirst>{children}</FocusFirst>
          </Question>
        </Modal>
      </ModalOverlay>
    </div>
  );
}

/** Focuses the first field, or where there is none the first button that removes nothing. */
function FocusFirst({ children }: { children: ReactNode }) {
  const mark = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const dialog = mark.current;
    if (dialog && !dialog.contains(document.activeElement)) {
      const first =
        dialog.querySelector<HTMLElement>('input:enabled, select:enabled, textarea:enabled') ??
        dialog.querySelector<HTMLElement>('button:enabled:not(.button-danger)');
      first?.focus();
    }
  }, []);
  return (
    <div ref={mark} className={`column ${styles.body}`}>
      {children}
    </div>
  );
}
