import type { Layer } from '../../shared-core/drawing/chart/description.ts';
import { IntervalMark, lineLook, PointMark, paint, Whisker } from './marks.tsx';

/** How a layer is drawn, in the 26 by 20 of the legend. */
export function LayerSymbol({ layer }: { layer: Layer }) {
  const { color } = layer;
  switch (layer.kind) {
    case 'line':
      return (
        <>
          {layer.values[0]?.low !== undefined && (
            <rect y="3" width="26" height="14" fill={paint(color)} fillOpacity={0.22} />
          )}
          <path d="M0 10h26" {...lineLook(color, layer.stroke)} />
        </>
      );
    case 'points':
      return (
        <>
          {layer.values.some(({ low }) => low !== undefined) && (
            <Whisker x={13} from={1} to={19} color={color} />
          )}
          {layer.isJoined && <path d="M0 10h26" {...lineLook(color, 'solid')} />}
          <PointMark shape={layer.shape} color={color} x={13} y={10} />
        </>
      );
    case 'level':
      return <path d="M0 10h26" {...lineLook(color, 'dash-dot')} />;
    case 'target':
      return <rect y="4" width="26" height="12" fill={paint('ready-soft')} stroke={paint(color)} />;
    case 'interval':
      return <IntervalMark color={color} y={10} from={2} to={24} end={24} likely={13} />;
    case 'marks':
      return <path d="M13 0v20" {...lineLook(color, layer.stroke)} />;
  }
}
