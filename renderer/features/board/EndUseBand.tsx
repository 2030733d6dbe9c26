import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { plotMargin } from '../../chart/Axes.tsx';
import type { Scale } from '../../chart/scale.ts';

/** The target range of a use, across a plot of moisture content over time. */
export function EndUseBand({
  endUse,
  y,
  width,
}: {
  endUse: Pick<EndUse, 'minPct' | 'maxPct'>;
  y: Scale;
  /** Of the whole drawing. */
  width: number;
}) {
  return (
    <rect
      className="finding-use"
      x={plotMargin.left}
      width={Math.max(0, width - plotMargin.left - plotMargin.right)}
      y={y.at(endUse.maxPct)}
      height={y.at(endUse.minPct) - y.at(endUse.maxPct)}
    />
  );
}
