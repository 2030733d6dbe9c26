import type { ReactNode } from 'react';
import './banner.css';

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
    <div className={`banner banner-${kind}`} role={kind === 'problem' ? 'alert' : 'status'}>
      <span className="banner-sign" aria-hidden="true">
        {signs[kind]}
      </span>
      <div className="banner-words">{children}</div>
      {actions && <div className="banner-actions">{actions}</div>}
    </div>
  );
}
