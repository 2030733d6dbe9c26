import type { CSSProperties } from 'react';
import { callMarks, callShapePath } from '../../shared-core/labels/call-mark.ts';
import { type Call, callSchema } from '../../shared-core/probing/calls/assessment.ts';
import { useWords } from '../words.ts';
import css from './call-badge.module.css';

/** The best news first. Their letters and shapes are those of the labels. */
export const callsInOrder: readonly Call[] = callSchema.options;

/** The color of a call, for its shape and what is written of it. */
export const inkOf = (call: Call): CSSProperties => ({ color: `var(--${call})` });

/** The ground on which a call is written. */
export const groundOf = (call: Call): CSSProperties => ({ background: `var(--${call}-soft)` });

const SIDE = 24;
const STROKE = 3;

/** The shape of a call alone; only beside its word or letter. */
export function CallShape({ call }: { call: Call }) {
  const { shape, filled } = callMarks[call];
  const inset = filled ? 0 : STROKE / 2 + 0.5;
  return (
    <svg className={css.shape} style={inkOf(call)} viewBox={`0 0 ${SIDE} ${SIDE}`} aria-hidden="true">
      <path
        d={callShapePath(shape, inset, inset, SIDE - 2 * inset)}
        fill={filled ? 'currentColor' : 'none'}
        stroke={filled ? 'none' : 'currentColor'}
        strokeWidth={STROKE}
        strokeLinejoin="round"
      />
    </svg>
  );
}

/** A call: shape, word and color, always together. */
export function CallBadge({ call, size = 'small' }: { call: Call; size?: 'small' | 'large' }) {
  const { say } = useWords();
  return (
    <span
      className={`marked ${css.badge} ${size === 'large' ? css.large : ''}`}
      style={{ ...inkOf(call), ...groundOf(call) }}
    >
      <CallShape call={call} />
      {say(`call.${call}`)}
    </span>
  );
}
