import { createElement, Fragment, type ReactNode } from 'react';
import type { Block, Inline } from '../../shared-core/guide/chapter.ts';
import { hrefOf } from '../stores/navigation.ts';
import { Banner } from '../ui/Banner.tsx';
import type { GuideChapter } from './guide.ts';
import size from './pictures/size.json';

/** One after another. A chapter never changes, so its parts need no keys. */
const inOrder = (parts: readonly ReactNode[]): ReactNode => createElement(Fragment, null, ...parts);

/** The words and pictures of a chapter. Each heading can be led to by its id. */
export function GuideText({ id, chapter, pictures }: GuideChapter) {
  const shown = (says: readonly Inline[]): ReactNode => inOrder(says.map(words));
  const item = (says: readonly Inline[]): ReactNode => <li>{shown(says)}</li>;
  const head = (says: readonly Inline[]): ReactNode => <th scope="col">{shown(says)}</th>;
  const cell = (says: readonly Inline[]): ReactNode => <td>{shown(says)}</td>;
  const row = ([first = [], ...others]: readonly Inline[][]): ReactNode => (
    <tr>
      <th scope="row">{shown(first)}</th>
      {inOrder(others.map(cell))}
    </tr>
  );

  function words(part: Inline): ReactNode {
    if (typeof part === 'string') return part;
    switch (part.kind) {
      case 'on-screen':
        return <strong>{part.text}</strong>;
      case 'code':
        return <code>{part.text}</code>;
      case 'link': {
        const { text, chapter: to, heading } = part;
        return <a href={hrefOf({ name: 'help', chapter: to ?? id, ...(heading && { heading }) })}>{text}</a>;
      }
    }
  }

  function blockOf(block: Block): ReactNode {
    switch (block.kind) {
      case 'heading':
        return (
          <h2 id={block.id} tabIndex={-1}>
            {block.text}
          </h2>
        );
      case 'paragraph':
        return <p>{shown(block.says)}</p>;
      case 'caution':
        return <Banner kind="caution">{shown(block.says)}</Banner>;
      case 'picture':
        return <img src={pictures[block.name]} alt={block.alt} {...size} />;
      case 'list': {
        const items = inOrder(block.items.map(item));
        return block.isNumbered ? <ol>{items}</ol> : <ul>{items}</ul>;
      }
      case 'table':
        return (
          <table>
            <thead>
              <tr>{inOrder(block.heads.map(head))}</tr>
            </thead>
            <tbody>{inOrder(block.rows.map(row))}</tbody>
          </table>
        );
    }
  }

  return inOrder(chapter.blocks.map(blockOf));
}
