import type { Use } from '../../../shared-core/probing/assessment.ts';
import { plotMargin } from '../../parts/chart/Axes.tsx';
import type { Scale } from '../../parts/chart/scale.ts';

/** What a use wants, across a plot of moisture content over time. */
export function UseBand({
  use,
  y,
  width,
}: {
  use: Pick<Use, 'minPct' | 'maxPct'>;
  y: Scale;
  /** Of the whole drawing. */
  width: number;
}) {
  return (
    <rect
      className="finding-use"
      x={plotMargin.left}
      width={Math.max(0, width - plotMargin.left - plotMargin.right)}
      y={y.at(use.maxPct)}
      height={y.at(use.minPct) - y.at(use.maxPct)}
    />
  );
}
