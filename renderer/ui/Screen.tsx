import { type ReactNode, useEffect, useId, useRef } from 'react';
import { useNavigation } from '../stores/navigation.ts';
import { useWords } from '../words.ts';
import { Banner } from './Banner.tsx';
import { Actions, Button } from './Button.tsx';
import './screen.css';

interface Titled {
  title: string;
  /** Whether the title is a name that a person gave, which no browser should translate. */
  isName?: boolean | undefined;
}

/** Gives the window its title and, after a change of place, the focus to the new screen's heading. */
export function ScreenHeading({ title, isName, children }: Titled & { children?: ReactNode }) {
  const { say } = useWords();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = say('frame.window-title', { title });
  }, [say, title]);
  useEffect(() => {
    if (useNavigation.getState().visits > 0) heading.current?.focus();
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1} translate={isName ? 'no' : undefined}>
      {children ?? title}
    </h1>
  );
}

/** A screen: its heading, what can be done with all of it, and its parts in reading order. */
export function Screen({
  title,
  isName,
  lead,
  actions,
  children,
}: Titled & {
  /** One sentence under the heading. */
  lead?: ReactNode;
  actions?: ReactNode;
  children: ReactNode;
}) {
  return (
    <div className="screen column">
      <header className="screen-head">
        <div>
          <ScreenHeading title={title} isName={isName} />
          {lead && <p className="screen-lead">{lead}</p>}
        </div>
        {actions && <Actions>{actions}</Actions>}
      </header>
      {children}
    </div>
  );
}

/** A group of things that belong together, on one sheet. */
export function Sheet({
  title,
  isName,
  actions,
  children,
}: Partial<Titled> & { actions?: ReactNode; children: ReactNode }) {
  const id = useId();
  return (
    <section className="sheet column" aria-labelledby={title && id}>
      {title && (
        <header className="sheet-head">
          <h2 id={id} translate={isName ? 'no' : undefined}>
            {title}
          </h2>
          {actions && <Actions>{actions}</Actions>}
        </header>
      )}
      {children}
    </section>
  );
}

/** Nothing here yet: says what would be here and how to begin. */
export function EmptyState({ sentence, children }: { sentence: string; children?: ReactNode }) {
  return (
    <div className="column empty-state">
      <p>{sentence}</p>
      {children && <Actions>{children}</Actions>}
    </div>
  );
}

/** Something is being asked for. Shown after a moment only, so that quick answers do not flicker. */
export function Loading() {
  const { say } = useWords();
  return (
    <p className="soft loading" role="status">
      {say('common.loading')}
    </p>
  );
}

/** It was asked for and did not come. */
export function Failed({ sentence, again }: { sentence: string; again?: (() => void) | undefined }) {
  const { say } = useWords();
  return (
    <Banner kind="problem" actions={again && <Button onClick={again}>{say('common.try-again')}</Button>}>
      {sentence}
    </Banner>
  );
}
