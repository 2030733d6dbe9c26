import type { ChartDescription, Layer, Tick, Value } from './description.ts';
import type { Layout } from './layout.ts';
import { IntervalMark, lineLook, PointMark, paint, Whisker } from './marks.tsx';
import { LINE_PX, TEXT_PX, widthOf } from './place-words.ts';

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
  const [under, over] = [
    drawn.filter(({ kind }) => kind === 'target'),
    drawn.filter((l) => l.kind !== 'target'),
  ];
  const drawing = (layer: Layer) => (
    <g key={layers.indexOf(layer)} data-layer={layer.name ?? layer.kind}>
      <LayerDrawing layer={layer} layout={layout} />
    </g>
  );
  return (
    <g fontSize={TEXT_PX} fontFamily="var(--face)" style={{ fontVariantNumeric: 'tabular-nums' }}>
      {under.map(drawing)}
      <Axes chart={chart} layout={layout} />
      {over.map(drawing)}
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
          {tick.year && (
            <text x={within(tick)} y={bottom + 18 + LINE_PX} textAnchor="middle" fontWeight={600} {...soft}>
              {tick.year}
            </text>
          )}
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

function LayerDrawing({ layer, layout }: { layer: Layer; layout: Layout }) {
  const { x, y, left, right, top, bottom, laneY, aside, ruleTops } = layout;
  const { color } = layer;
  const pathOf = (values: readonly Value[]) =>
    values.map((value, index) => `${index ? 'L' : 'M'}${px(x.at(value.x))} ${px(y.at(value.y))}`).join('');
  switch (layer.kind) {
    case 'target': {
      const [high, low] = [y.at(layer.high), y.at(layer.low)];
      const look = { fill: paint('ready-soft'), stroke: paint(color), strokeDasharray: '2 3' };
      return <rect x={left} width={right - left} y={high} height={low - high} {...look} />;
    }
    case 'line':
      return (
        <>
          <path d={bandOf(layer.values, layout)} fill={paint(color)} fillOpacity={0.22} />
          <path d={pathOf(layer.values)} {...lineLook(color, layer.stroke)} />
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
          {layer.isJoined && <path d={pathOf(layer.values)} {...lineLook(color, 'solid')} />}
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

const px = (value: number): string => value.toFixed(1);

/** Around the values that have an interval: along the high ends, and back along the low ones. */
function bandOf(values: readonly Value[], { x, y }: Layout): string {
  const ends = values.flatMap(({ x: at, low, high }) =>
    low === undefined || high === undefined
      ? []
      : [{ at: px(x.at(at)), low: px(y.at(low)), high: px(y.at(high)) }],
  );
  const corners = [
    ...ends.map(({ at, high }) => `${at} ${high}`),
    ...ends.map(({ at, low }) => `${at} ${low}`).reverse(),
  ];
  return corners.length > 0 ? `M${corners.join('L')}Z` : '';
}
