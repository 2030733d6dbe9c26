import type { ChartDescription, Layer, Tick } from '../../shared-core/drawing/chart/description.ts';
import type { Layout } from '../../shared-core/drawing/chart/layout.ts';
import { LINE_PX, TEXT_PX, widthOf } from '../../shared-core/drawing/chart/place-words.ts';
import { LayerDrawing } from './LayerDrawing.tsx';
import { paint } from './marks.tsx';

/** Later ones are drawn over earlier ones. */
const depthOf: Record<Layer['kind'], number> = {
  target: 0,
  marks: 1,
  line: 2,
  level: 3,
  interval: 4,
  points: 5,
};

/** A chart's axes, layers and words, and where it is being read. */
export function Drawing({
  chart,
  layout,
  cursor,
}: {
  chart: ChartDescription;
  layout: Layout;
  /** The x that is read; null: none. */
  cursor: number | null;
}) {
  const { layers, words, top, bottom, x } = layout;
  const drawn = layers.toSorted((a, b) => depthOf[a.kind] - depthOf[b.kind]);
  const drawing = (layer: Layer) => (
    <g key={layers.indexOf(layer)} data-layer={layer.name ?? layer.kind}>
      <LayerDrawing layer={layer} layout={layout} />
    </g>
  );
  return (
    <g fontSize={TEXT_PX} fontFamily="var(--face)" style={{ fontVariantNumeric: 'tabular-nums' }}>
      {drawn.filter(({ kind }) => kind === 'target').map(drawing)}
      <Axes chart={chart} layout={layout} />
      {drawn.filter(({ kind }) => kind !== 'target').map(drawing)}
      {words.map(({ text, x: at, y, anchor, isName }) => (
        <text
          key={`${text} ${at} ${y}`}
          x={at}
          y={y}
          textAnchor={anchor}
          className={isName ? 'notranslate' : undefined}
          fill={paint('ink')}
          fontWeight={600}
          stroke={paint('sheet')}
          strokeWidth={4}
          strokeLinejoin="round"
          paintOrder="stroke"
        >
          {text}
        </text>
      ))}
      {cursor !== null && (
        <path d={`M${x.at(cursor)} ${top}V${bottom}`} stroke={paint('ink')} strokeWidth={1.5} data-cursor />
      )}
    </g>
  );
}

function Axes({ chart, layout }: { chart: ChartDescription; layout: Layout }) {
  const { left, right, bottom, height, x, y, width, xTicks, yTicks } = layout;
  const soft = { fill: paint('ink-soft') };
  const within = ({ at, label }: Tick) =>
    Math.min(Math.max(x.at(at), widthOf(label) / 2), width - widthOf(label) / 2);
  return (
    <>
      {yTicks.map(({ at, label }) => (
        <g key={at}>
          <path d={`M${left} ${y.at(at)}H${right}`} stroke={paint('line')} />
          <text x={left - 6} y={y.at(at)} textAnchor="end" dominantBaseline="middle" {...soft}>
            {label}
          </text>
        </g>
      ))}
      {xTicks.map((tick) => (
        <g key={tick.at}>
          <path d={`M${x.at(tick.at)} ${bottom}v5`} stroke={paint('line-strong')} />
          <text x={within(tick)} y={bottom + 18} textAnchor="middle" {...soft}>
            {tick.label}
          </text>
          <text x={within(tick)} y={bottom + 18 + LINE_PX} textAnchor="middle" fontWeight={600} {...soft}>
            {tick.year}
          </text>
        </g>
      ))}
      <path d={`M${left} ${bottom}H${right}`} stroke={paint('line-strong')} strokeWidth={1.5} />
      <text x={0} y={TEXT_PX} {...soft}>
        {chart.y.title}
      </text>
      <text x={right} y={height - 4} textAnchor="end" {...soft}>
        {chart.x.title}
      </text>
    </>
  );
}
