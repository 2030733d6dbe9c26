import { ovenDryMcPct } from './oven-dry.ts';

/** A section across the full width and thickness, about 25 mm along the grain, cut beside the sample board. */
export interface EndSection {
  /** When cut, g. */
  wetGrams: number;
  /** When oven-dry, g. */
  dryGrams: number;
}

export interface SampleBoard {
  /** Oven-dry mass that the board would come to, kg. */
  ovenDryKg: number;
  /** Mean of the sections: the board's moisture content when they were cut, %. */
  mcWhenCutPct: number;
  /** How far the mean of the sections may be off, one sigma, % MC; null for a single section. */
  standardErrorPct: number | null;
}

/**
 * The oven-dry mass of a board that is not dried, from sections cut beside it: from then on its mass alone tells its
 * moisture content.
 *
 * @param boardKg    mass of the board when the sections were cut, kg, above 0
 * @param sections   one or more, commonly one from each end
 * @throws           RangeError without a section, or where a mass makes no sense
 * Source: Dry Kiln Operator's Manual (USDA Agriculture Handbook 188), chapter 6 (from memory): the mean of the
 * sections' MC is the board's; oven-dry mass = 100 mass / (100 + MC).
 */
export function sampleBoard(boardKg: number, sections: readonly EndSection[]): SampleBoard {
  if (!(boardKg > 0)) throw new RangeError(`The board's mass must be above 0 kg, not ${boardKg}.`);
  if (sections.length === 0) throw new RangeError('At least one section must be cut and oven-dried.');
  const mcs = sections.map(({ wetGrams, dryGrams }) => ovenDryMcPct(wetGrams, dryGrams));
  const mcWhenCutPct = mcs.reduce((sum, mc) => sum + mc, 0) / mcs.length;
  const squares = mcs.reduce((sum, mc) => sum + (mc - mcWhenCutPct) ** 2, 0);
  return {
    ovenDryKg: (100 * boardKg) / (100 + mcWhenCutPct),
    mcWhenCutPct,
    standardErrorPct: mcs.length > 1 ? Math.sqrt(squares / (mcs.length - 1) / mcs.length) : null,
  };
}

/**
 * Moisture content of a sample board from its mass now.
 *
 * An error of the sections carries over in proportion: with oven-dry mass 2 % too high, every MC is 2 % of
 * (100 + MC) too low. So the board is cut again near the end, and its oven-dry mass found again.
 *
 * @param boardKg     mass now, kg, above 0
 * @param ovenDryKg   from `sampleBoard`, kg, above 0
 * @returns           % MC; a little below 0 where the oven-dry mass was estimated too high
 * @throws            RangeError where a mass is not above 0
 * Source: as `sampleBoard`.
 */
export function mcFromMassPct(boardKg: number, ovenDryKg: number): number {
  if (!(boardKg > 0 && ovenDryKg > 0)) throw new RangeError('Both masses must be above 0 kg.');
  return 100 * (boardKg / ovenDryKg - 1);
}

/** Mass at which a sample board will be at a moisture content, kg: what the scale must show. */
export function massAtMcKg(ovenDryKg: number, mcPct: number): number {
  if (!(ovenDryKg > 0 && mcPct >= 0))
    throw new RangeError('The mass must be above 0 kg and the MC not below 0 %.');
  return ovenDryKg * (1 + mcPct / 100);
}
