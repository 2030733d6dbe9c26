import type { ReactNode } from 'react';
import { Actions } from './Button.tsx';
import css from './banner.module.css';

/** A sentence across the screen. A problem is read out at once, anything else when there is a pause. */
export function Banner({
  kind = 'info',
  children,
  actions,
}: {
  kind?: 'info' | 'done' | 'caution' | 'problem';
  children: ReactNode;
  actions?: ReactNode;
}) {
  const signs = { info: 'i', done: '✓', caution: '!', problem: '✕' };
  return (
    <div className={`${css.banner} ${css[kind] ?? ''}`} role={kind === 'problem' ? 'alert' : 'status'}>
      <span className={css.sign} aria-hidden="true">
        {signs[kind]}
      </span>
      <div className={css.words}>{children}</div>
      {actions && <Actions>{actions}</Actions>}
    </div>
  );
}
