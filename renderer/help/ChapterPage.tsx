import { useEffect } from 'react';
import { hrefOf } from '../stores/navigation.ts';
import { Button, ButtonLink } from '../ui/Button.tsx';
import { Screen } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';
import { GuideText } from './GuideText.tsx';
import { type GuideChapter, useGuide } from './guide.ts';
import css from './help.module.css';

/** A chapter, with the way to the others. `heading` is what a link leads to. */
export function ChapterPage({ chapter, heading }: { chapter: GuideChapter; heading: string | null }) {
  const { say } = useWords();
  const { chapters } = useGuide();
  const at = chapters.indexOf(chapter);
  const [before, after] = [chapters[at - 1], chapters[at + 1]];
  useEffect(() => {
    const aimed = heading === null ? null : document.getElementById(heading);
    aimed?.scrollIntoView();
    aimed?.focus();
  }, [heading]);
  return (
    <Screen
      title={chapter.chapter.title}
      actions={
        <>
          <ButtonLink href={hrefOf({ name: 'help' })}>{say('help.all')}</ButtonLink>
          <Button onClick={() => window.print()}>{say('common.print')}</Button>
        </>
      }
    >
      <div className={css.page}>
        <nav className={css.chapters} aria-label={say('help.chapters')}>
          <ul>
            {chapters.map((each) => (
              <li key={each.id}>
                <a
                  href={hrefOf({ name: 'help', chapter: each.id })}
                  aria-current={each === chapter ? 'page' : undefined}
                >
                  {each.chapter.title}
                </a>
              </li>
            ))}
          </ul>
        </nav>
        <article className={`sheet ${css.text}`}>
          <GuideText {...chapter} />
        </article>
      </div>
      <nav className={css.turn} aria-label={say('help.turn')}>
        {before && (
          <ButtonLink href={hrefOf({ name: 'help', chapter: before.id })}>
            {say('help.previous', { chapterTitle: before.chapter.title })}
          </ButtonLink>
        )}
        {after && (
          <ButtonLink kind="main" href={hrefOf({ name: 'help', chapter: after.id })}>
            {say('help.next', { chapterTitle: after.chapter.title })}
          </ButtonLink>
        )}
      </nav>
    </Screen>
  );
}
