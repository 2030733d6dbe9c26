import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import type { ChartDescription } from '../../shared-core/drawing/chart/description.ts';
import { layoutOf } from '../../shared-core/drawing/chart/layout.ts';
import { LINE_PX, widthOf } from '../../shared-core/drawing/chart/place-words.ts';
import { download } from '../data/download.ts';
import { Drawing } from './Drawing.tsx';
import { LayerSymbol } from './LayerSymbol.tsx';
import { paint } from './marks.tsx';

/** As wide as a page needs, whatever the window is, px. */
const WIDTH = 960;
const EDGE = 16;
const HEAD = 44;
const LEGEND_LINE = 28;
const SYMBOL = 34;
/** So that a picture of dots is sharp in print. */
const PNG_SCALE = 2;

/** The chart with its title and legend as an SVG file that needs nothing else: each color is in it. */
export function svgFileOf(chart: ChartDescription): Blob {
  const host = document.createElement('div');
  const root = createRoot(host);
  flushSync(() => root.render(<Picture chart={chart} />));
  const text = new XMLSerializer().serializeToString(host.firstElementChild!);
  root.unmount();
  const tokens = getComputedStyle(document.documentElement);
  const whole = text.replace(/var\((--[\w-]+)\)/g, (_, token) =>
    tokens.getPropertyValue(token).trim().replaceAll('"', "'"),
  );
  return new Blob([whole], { type: 'image/svg+xml' });
}

/** The same as dots. */
async function pngFileOf(chart: ChartDescription): Promise<Blob> {
  const address = URL.createObjectURL(svgFileOf(chart));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = new OffscreenCanvas(PNG_SCALE * image.width, PNG_SCALE * image.height);
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await canvas.convertToBlob();
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Hands a chart over as a file, named "EMC-at-Pole-shed-by-month.svg". */
export async function saveChart(chart: ChartDescription, as: 'svg' | 'png'): Promise<void> {
  const file = as === 'svg' ? svgFileOf(chart) : await pngFileOf(chart);
  download(file, `${chart.title.replaceAll(/[^\p{L}\p{N}]+/gu, '-')}.${as}`);
}

function Picture({ chart }: { chart: ChartDescription }) {
  const layout = layoutOf(chart, WIDTH);
  const items: { layer: (typeof layout.legend)[number]; x: number; line: number }[] = [];
  let [x, line] = [0, 0];
  for (const layer of layout.legend) {
    const room = SYMBOL + widthOf(layer.name) + EDGE;
    if (x + room > WIDTH) [x, line] = [0, line + 1];
    items.push({ layer, x, line });
    x += room;
  }
  const [width, height] = [WIDTH + 2 * EDGE, HEAD + layout.height + (line + 1) * LEGEND_LINE + 2 * EDGE];
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`}>
      <title>{chart.title}</title>
      <rect width={width} height={height} fill={paint('sheet')} />
      <g transform={`translate(${EDGE} ${EDGE})`} fontFamily="var(--face)" fill={paint('ink')}>
        <text y={LINE_PX} fontSize={18} fontWeight={700}>
          {chart.title}
        </text>
        <g transform={`translate(0 ${HEAD})`}>
          <Drawing chart={chart} layout={layout} cursor={null} />
        </g>
        {items.map(({ layer, x: left, line: at }) => (
          <g
            key={layer.name}
            transform={`translate(${left} ${HEAD + layout.height + EDGE + at * LEGEND_LINE})`}
          >
            <LayerSymbol layer={layer} />
            <text x={SYMBOL} y={15} fontSize={13}>
              {layer.name}
            </text>
          </g>
        ))}
      </g>
    </svg>
  );
}
