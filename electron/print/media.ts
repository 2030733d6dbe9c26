import { MM_PER_POINT } from '../../shared-core/measures.ts';

/**
 * Names of papers by their sizes (PWG 5101.1, "Standard Media Size Names", section 5: "class_name_WIDTHxHEIGHTunits",
 * from memory). "custom_min_…" and "custom_max_…" say between which sizes a printer takes any.
 */
const named = /^(.*)_(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)(mm|in)$/;
const MM_PER_IN = 25.4;
/** Sizes that differ by less are one: names have whole millimeters, or hundredths of an inch. */
const SAME_MM = 1;

interface Size {
  name: string;
  widthMm: number;
  heightMm: number;
}

function sizeOf(name: string): Size[] {
  const [, kind, width, height, unit] = named.exec(name) ?? [];
  if (kind === undefined) return [];
  const mm = unit === 'in' ? MM_PER_IN : 1;
  return [{ name, widthMm: Number(width) * mm, heightMm: Number(height) * mm }];
}

/**
 * CUPS cuts sizes down to whole points, which takes up to 0.35 mm off a label: it is given the nearest, and a little more,
 * which its conversions by 1/100 mm take away.
 */
const points = (mm: number): string => (Math.round(mm / MM_PER_POINT) + 0.2).toFixed(1);

const isNear = (one: number, other: number): boolean => Math.abs(one - other) <= SAME_MM;

/**
 * What a printer is to be told of the paper in it.
 * @param supported  the papers it lists; empty if it lists none, and then any size is sent
 * @returns          null where it takes no such paper
 */
export function mediaFor(supported: readonly string[], widthMm: number, heightMm: number): string | null {
  const sizes = supported.flatMap(sizeOf);
  const [least, most] = ['custom_min', 'custom_max'].map((kind) =>
    sizes.find(({ name }) => name.startsWith(`${kind}_`)),
  );
  const same = sizes.find(
    (size) =>
      size !== least && size !== most && isNear(size.widthMm, widthMm) && isNear(size.heightMm, heightMm),
  );
  if (same) return same.name;
  const isWithin =
    least !== undefined &&
    most !== undefined &&
    widthMm >= least.widthMm &&
    heightMm >= least.heightMm &&
    widthMm <= most.widthMm &&
    heightMm <= most.heightMm;
  return isWithin || sizes.length === 0 ? `Custom.${points(widthMm)}x${points(heightMm)}` : null;
}
