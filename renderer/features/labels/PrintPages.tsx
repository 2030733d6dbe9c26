import { useEffect } from 'react';
import { createPortal } from 'react-dom';
import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import { useWords } from '../../words.ts';
import { LabelSheet } from './LabelSheet.tsx';
import styles from './labels.module.css';

/**
 * Hands pages to the system's print dialog, each on a page of exactly its size, and nothing else of the window.
 * Drawn only while printing.
 */
export function PrintPages({ pages, onDone }: { pages: readonly DrawnPage[]; onDone: () => void }) {
  const [first] = pages;
  const { say } = useWords();
  useEffect(() => {
    if (!first) return;
    // The page's content policy allows no style written into the page; a sheet made by script is allowed.
    const pageSize = new CSSStyleSheet();
    pageSize.replaceSync(`@page { size: ${first.widthMm}mm ${first.heightMm}mm; margin: 0 }`);
    document.adoptedStyleSheets.push(pageSize);
    addEventListener('afterprint', onDone);
    print();
    return () => {
      removeEventListener('afterprint', onDone);
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== pageSize);
    };
  }, [first, onDone]);
  return createPortal(
    <div className={styles.printed}>
      {pages.map((page, index) => (
        <LabelSheet
          // biome-ignore lint/suspicious/noArrayIndexKey: a page is its number.
          key={index}
          page={page}
          title={say('labels.page', { page: index + 1, pages: pages.length })}
        />
      ))}
    </div>,
    document.body,
  );
}
