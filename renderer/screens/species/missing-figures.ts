import type { Species } from '../../../shared-core/wood/species/species.ts';

/** What cannot be said of boards of a wood for want of a figure, as sentences; empty where all is known. */
export function missingFigures(species: Species): string[] {
  const sentences: string[] = [];
  if (species.curveId === null && species.linear === null) {
    sentences.push(
      'No resistance curve and no coefficients: readings are corrected for temperature only, so trust how they change more than the value. Your own oven-dry checks put that right.',
    );
  }
  if (species.basicSpecificGravity === null) {
    sentences.push(
      'No specific gravity: the mass of a board, and how fast it will dry, are not told from the wood.',
    );
  }
  if (species.radialPct === null || species.tangentialPct === null) {
    sentences.push('Shrinkage is not known both ways: cup is not foreseen.');
  }
  if ((species.radialPct === null || species.tangentialPct === null) && species.changeCoefficient === null) {
    sentences.push('No change coefficients either: nor is the change of width and thickness.');
  }
  return sentences;
}
