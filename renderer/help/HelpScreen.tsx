import { plainText } from '../../shared-core/guide/chapter.ts';
import { findIn } from '../../shared-core/guide/find.ts';
import { useSearchField } from '../form/useSearchField.tsx';
import { hrefOf } from '../stores/navigation.ts';
import { EmptyState, Screen, Sheet } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';
import { ChapterPage } from './ChapterPage.tsx';
import { type GuideChapter, useGuide } from './guide.ts';
import css from './help.module.css';

/** The user's guide: what its chapters are, or one of them. */
export function HelpScreen({ chapter: id, heading }: { chapter: string | null; heading: string | null }) {
  const { say } = useWords();
  const chapter = useGuide().chapters.find((each) => each.id === id);
  if (chapter) return <ChapterPage chapter={chapter} heading={heading} />;
  return (
    <Screen title={say('help.title')} lead={say('help.lead')}>
      {id !== null && <EmptyState sentence={say('help.no-chapter')} />}
      <Contents />
    </Screen>
  );
}

function Contents() {
  const { say } = useWords();
  const [typedText, searchField] = useSearchField({ label: say('help.find'), hint: say('help.find-hint') });
  return (
    <Sheet>
      {searchField}
      {typedText === '' ? <Chapters /> : <FoundParts typedText={typedText} />}
    </Sheet>
  );
}

function Chapters() {
  const { say } = useWords();
  const { chapters } = useGuide();
  return (
    <ol className={css.contents}>
      {chapters.map((each) => (
        <li key={each.id}>
          <a href={hrefOf({ name: 'help', chapter: each.id })}>{each.chapter.title}</a>
          <p className="soft">{leadOf(each)}</p>
        </li>
      ))}
      <li>
        <a href={hrefOf({ name: 'methods' })}>{say('methods.title')}</a>
        <p className="soft">{say('help.methods-lead')}</p>
      </li>
      <li>
        <a href={hrefOf({ name: 'licenses' })}>{say('licenses.title')}</a>
        <p className="soft">{say('licenses.lead')}</p>
      </li>
    </ol>
  );
}

/** The sentence that a chapter begins with. */
function leadOf({ chapter: { blocks } }: GuideChapter): string {
  const [first] = blocks;
  return first?.kind === 'paragraph' ? plainText(first.says) : '';
}

function FoundParts({ typedText }: { typedText: string }) {
  const { say } = useWords();
  const found = findIn(useGuide().parts, typedText);
  return (
    <>
      <p role="status" className="soft">
        {say('help.found', { found: found.length, typedText })}
      </p>
      <ul className={css.contents}>
        {found.map(({ chapterId, chapterTitle, heading, line }) => (
          <li key={`${chapterId} ${heading?.id}`}>
            <a href={hrefOf({ name: 'help', chapter: chapterId, ...(heading && { heading: heading.id }) })}>
              {heading ? `${chapterTitle}: ${heading.text}` : chapterTitle}
            </a>
            <p className="soft">{line}</p>
          </li>
        ))}
      </ul>
    </>
  );
}
