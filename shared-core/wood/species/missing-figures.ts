import { type Message, message } from '../../words/message.ts';
import type { Species } from './species.ts';

/** Which figures of a species are missing, each with what that prevents; empty where none is. */
export function missingFigures(species: Species): Message[] {
  const hasShrinkage = species.radialPct !== null && species.tangentialPct !== null;
  const missing: Message[] = [];
  if (species.curveId === null && species.linear === null) missing.push(message('species.missing.curve'));
  if (species.basicSpecificGravity === null) missing.push(message('species.missing.specific-gravity'));
  if (!hasShrinkage) missing.push(message('species.missing.shrinkage'));
  if (!hasShrinkage && species.changeCoefficient === null) missing.push(message('species.missing.change'));
  return missing;
}
