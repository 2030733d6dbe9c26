import type { Layer } from '../../shared-core/drawing/chart/description.ts';
import type { Layout } from '../../shared-core/drawing/chart/layout.ts';
import { bandPath, curvePath } from '../../shared-core/drawing/chart/paths.ts';
import { IntervalMark, lineLook, PointMark, paint, Whisker } from './marks.tsx';

/** One layer where its layout has it. */
export function LayerDrawing({ layer, layout }: { layer: Layer; layout: Layout }) {
  const { x, y, left, right, top, bottom, laneY, aside, ruleTops } = layout;
  const { color } = layer;
  switch (layer.kind) {
    case 'target': {
      const [high, low] = [y.at(layer.high), y.at(layer.low)];
      const look = { fill: paint('ready-soft'), stroke: paint(color), strokeDasharray: '2 3' };
      return <rect x={left} width={right - left} y={high} height={low - high} {...look} />;
    }
    case 'line':
      return (
        <>
          <path d={bandPath(layer.values, layout)} fill={paint(color)} fillOpacity={0.22} />
          <path d={curvePath(layer.values, layout)} {...lineLook(color, layer.stroke)} />
        </>
      );
    case 'level': {
      const from = x.at(Math.max(layer.from ?? x.from, x.from));
      return <path d={`M${from} ${y.at(layer.y)}H${right}`} {...lineLook(color, 'dash-dot')} />;
    }
    case 'marks':
      return layer.values.map((mark) => (
        <path
          key={`${mark.x} ${mark.word}`}
          d={`M${x.at(mark.x)} ${ruleTops.get(mark) ?? top}V${bottom}`}
          {...lineLook(color, layer.stroke)}
          strokeWidth={1.5}
        />
      ));
    case 'interval': {
      const { from, to, likely } = layer;
      const ends = { from: Math.max(left, x.at(from)), to: to === null || to > x.to ? null : x.at(to) };
      const shown = likely === null || likely > x.to || likely < x.from ? null : x.at(likely);
      return <IntervalMark color={color} y={laneY} {...ends} end={right} likely={shown} />;
    }
    case 'points':
      return (
        <>
          {layer.isJoined && <path d={curvePath(layer.values, layout)} {...lineLook(color, 'solid')} />}
          {layer.values.map((value, index) => {
            const at = x.at(value.x) + (aside.get(value) ?? 0);
            const { low, high } = value;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: two values may be alike in everything.
              <g key={index}>
                {low !== undefined && high !== undefined && (
                  <Whisker x={at} from={y.at(low)} to={y.at(high)} color={color} />
                )}
                <PointMark shape={layer.shape} color={color} x={at} y={y.at(value.y)} />
              </g>
            );
          })}
        </>
      );
  }
}
