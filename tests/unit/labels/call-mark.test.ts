import { expect, test } from 'vitest';
import { callMarks, callShapePath } from '../../../shared-core/labels/call-mark.ts';

test.each(Object.entries(callMarks))(
  'the mark of “%s” is filled or has a tip at its top, so that nobody ticks it as a box',
  (_call, { shape, filled }) => {
    const heights = [...callShapePath(shape, 0, 0, 1).matchAll(/[ML][\d.]+ ([\d.]+)/g)].map(([, y]) =>
      Number(y),
    );
    const atTop = heights.filter((y) => y === Math.min(...heights)).length;
    expect(filled || atTop === 1).toBe(true);
  },
);
