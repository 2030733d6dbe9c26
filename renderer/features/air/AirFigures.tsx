import type { ComponentProps } from 'react';
import { Facts } from '../../ui/Facts.tsx';
import css from './air.module.css';

/** Results of the air that was typed, and what they mean: read out when they change. */
export function AirFigures({ of, note }: ComponentProps<typeof Facts> & { note?: string }) {
  return (
    <>
      <div className={css.figures} aria-live="polite">
        <Facts of={of} />
      </div>
      {note && <p className="soft">{note}</p>}
    </>
  );
}
