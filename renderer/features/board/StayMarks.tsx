import type { Scale } from '../../chart/scale.ts';

/** The room that a place's name needs, px. */
const NAME_PX = 120;
const LINE_PX = 16;
/** The room for two lines of names above a plot, px. */
export const STAY_NAMES_PX = 34;

/** Where a board was brought to a place, named above the plot; names that would run into each other take turns in two lines. */
export function StayMarks({
  stays,
  x,
  top,
  bottom,
  right,
}: {
  /** Oldest first. */
  stays: readonly { fromMs: number; placeName: string }[];
  x: Scale;
  top: number;
  bottom: number;
  right: number;
}) {
  return stays.map(({ fromMs, placeName }, index) => {
    const left = x.at(fromMs);
    const before = stays[index - 1];
    const isCrowded = before !== undefined && left - x.at(before.fromMs) < NAME_PX;
    const textY = top + (isCrowded && index % 2 === 1 ? LINE_PX : 0);
    const isLate = left > right - NAME_PX;
    return (
      // biome-ignore lint/suspicious/noArrayIndexKey: stays are in order of time and two may begin at once.
      <g key={index}>
        <line className="finding-move" x1={left} x2={left} y1={textY + 4} y2={bottom} />
        <text
          x={isLate ? left - 4 : left + 4}
          y={textY}
          textAnchor={isLate ? 'end' : 'start'}
          className="notranslate"
        >
          {shortened(placeName)}
        </text>
      </g>
    );
  });
}

const shortened = (name: string) => (name.length > 18 ? `${name.slice(0, 17)}…` : name);
