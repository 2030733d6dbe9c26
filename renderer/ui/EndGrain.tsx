import { useId } from 'react';
import { type BarkSide, barkFaceOf, hasBarkOn } from '../../shared-core/wood/drying/faces-of-board.ts';
import { RING_ANGLE_DEG } from '../../shared-core/wood/movement/shrinkage.ts';
import { usualRingRadiusMm } from '../../shared-core/wood/movement/warp.ts';

const WIDTH = 100;
/** Thinner, and the rings would run together; thicker, and it would fill the stack. */
const HEIGHTS = { least: 12, most: 24 };

/** Lines are as thick on a wide drawing as on a narrow one. */
const unscaled = { vectorEffect: 'non-scaling-stroke' } as const;

export interface EndOfBoard {
  sawing: keyof typeof RING_ANGLE_DEG | 'unknown';
  ringRadiusMm: number | null;
  barkSide: BarkSide;
  thicknessMm: number;
  widthMm: number | null;
}

/** Whether enough is known of the board's end to draw it: how its rings lie, or on which face the bark is. */
export function isEndKnown({ sawing, barkSide }: EndOfBoard): boolean {
  return sawing === 'quarter' || hasBarkOn(barkSide) || (sawing !== 'unknown' && barkSide !== 'unknown');
}

/** The board's end as it lies, with its rings and bark as entered. */
export function EndGrain({ board }: { board: EndOfBoard }) {
  const clip = useId();
  const widthMm = board.widthMm ?? 6 * board.thicknessMm;
  const height = Math.max(HEIGHTS.least, Math.min(HEIGHTS.most, (WIDTH * board.thicknessMm) / widthMm));
  const bark = hasBarkOn(board.barkSide) ? barkFaceOf(board.barkSide) : null;
  return (
    <svg width="100%" viewBox={`0 -2 ${WIDTH} ${height + 4}`} aria-hidden="true">
      <clipPath id={clip}>
        <rect width={WIDTH} height={height} rx="1" />
      </clipPath>
      <g fill="none" stroke="var(--line-strong)">
        <rect {...unscaled} fill="var(--sheet)" width={WIDTH} height={height} rx="1" />
        <g stroke="var(--ink-soft)" clipPath={`url(#${clip})`}>
          {ringsOf(board, WIDTH / widthMm, height).map(({ radius, x, y }) => (
            <circle key={radius} {...unscaled} cx={x} cy={y} r={radius} />
          ))}
        </g>
        {bark && <path {...unscaled} strokeWidth={7} d={`M0 ${bark === 'a' ? 0 : height}H${WIDTH}`} />}
      </g>
    </svg>
  );
}

/** Circles around the pith, some to the board's thickness. */
function ringsOf({ sawing, barkSide, ringRadiusMm }: EndOfBoard, scale: number, height: number) {
  // Quarter-sawn, the rings stand upright whichever side the bark was.
  if (sawing === 'unknown' || (barkSide === 'unknown' && sawing !== 'quarter')) return [];
  const angle = (RING_ANGLE_DEG[sawing] * Math.PI) / 180;
  const middle = (ringRadiusMm ?? usualRingRadiusMm) * scale;
  const x = WIDTH / 2 + middle * Math.sin(angle);
  const y = height / 2 + (barkFaceOf(barkSide) === 'b' ? -1 : 1) * middle * Math.cos(angle);
  const apart = height / 4;
  const half = Math.hypot(WIDTH, height) / 2;
  const from = Math.max(apart, middle - half);
  return Array.from({ length: Math.ceil((middle + half - from) / apart) }, (_, ring) => ({
    radius: from + ring * apart,
    x,
    y,
  }));
}
