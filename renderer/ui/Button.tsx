import type { ComponentProps, ReactNode } from 'react';
import './button.css';

export type ButtonKind = 'main' | 'plain' | 'quiet' | 'danger';

/** The look of a button, for parts that bring their own element. */
export const buttonLook = (kind: ButtonKind): string => ['button', `button-${kind}`].join(' ');

/** A button to press with gloves on. */
export function Button({
  kind = 'plain',
  shortcut,
  children,
  ...rest
}: ComponentProps<'button'> & {
  /** `main`: the one thing to do next. `danger`: removes something. */
  kind?: ButtonKind;
  /** The key that does the same, shown beside the words. */
  shortcut?: string;
}) {
  return (
    <button type="button" className={buttonLook(kind)} {...rest}>
      <span>{children}</span>
      {shortcut && (
        <span className="key" aria-hidden="true">
          {shortcut}
        </span>
      )}
    </button>
  );
}

/** A link that looks like a button: it leads somewhere and changes nothing. */
export function ButtonLink({
  kind = 'plain',
  children,
  ...rest
}: ComponentProps<'a'> & { kind?: ButtonKind }) {
  return (
    <a className={buttonLook(kind)} {...rest}>
      <span>{children}</span>
    </a>
  );
}

/** A row of buttons, as it ends a dialog, a form or a heading. */
export function Actions({ children }: { children: ReactNode }) {
  return <div className="actions">{children}</div>;
}
