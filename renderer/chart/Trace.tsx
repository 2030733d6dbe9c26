import { lineLook, paint } from './marks.tsx';

const WIDTH = 600;
const HEIGHT = 120;
/** A steady value must look steady: the picture never shows less than this from bottom to top. */
const LEAST_SPAN = { pct: 2, ohm: 0.3 };

/** Where one value is on the picture's own scale: % as it is, ohms by decades. */
const scaled = (value: number, unit: 'pct' | 'ohm') =>
  unit === 'ohm' ? Math.log10(Math.max(value, 1)) : value;

/** The live values of the last moments, newest at the right; a gap where the pins were out. The number says the same. */
export function Trace({
  values,
  unit,
  slots,
}: {
  values: readonly (number | null)[];
  unit: 'pct' | 'ohm';
  /** For how many values there is room; fewer are at the right. */
  slots: number;
}) {
  const room = Math.max(slots, values.length, 2);
  const present = values.filter((value) => value !== null).map((value) => scaled(value, unit));
  const low = Math.min(...present);
  const high = Math.max(...present);
  const span = Math.max(high - low, LEAST_SPAN[unit]);
  const middle = (low + high) / 2;
  const y = (value: number) => HEIGHT / 2 - ((scaled(value, unit) - middle) / span) * (HEIGHT - 16);
  const x = (index: number) => ((room - values.length + index) / (room - 1)) * WIDTH;

  const pointAt = (value: number, index: number) => `${x(index).toFixed(1)} ${y(value).toFixed(1)}`;
  let path = '';
  values.forEach((value, index) => {
    const isFirst = index === 0 || values[index - 1] === null;
    if (value !== null) path += `${isFirst ? 'M' : 'L'}${pointAt(value, index)}`;
  });
  const last = values.at(-1);
  return (
    <svg
      className="trace"
      width="100%"
      height="80"
      overflow="visible"
      display="block"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path d={`M0 ${HEIGHT - 1}H${WIDTH}`} stroke={paint('line')} />
      <path d={path} {...lineLook('accent', 'solid')} vectorEffect="non-scaling-stroke" />
      {last !== null && last !== undefined && (
        <path
          d={`M${pointAt(last, values.length - 1)}h0.01`}
          stroke={paint('accent')}
          strokeWidth={12}
          strokeLinecap="round"
          vectorEffect="non-scaling-stroke"
        />
      )}
    </svg>
  );
}
