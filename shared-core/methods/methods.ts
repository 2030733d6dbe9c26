import type { EndUse } from '../wood/species/end-use.ts';
import type { Species } from '../wood/species/species.ts';
import { airMethods, emcMethods } from './air-methods.ts';
import { dryingMethods } from './drying-methods.ts';
import {
  callMethods,
  cautions,
  questionableMethods,
  sampleMethods,
  shrinkageMethods,
} from './judging-methods.ts';
import type { MethodPart } from './method-part.ts';
import { correctionMethods, curveMethods, depthMethods } from './reading-methods.ts';
import { fromMemory, numbersUsed, speciesSources } from './source-methods.ts';
import { trialMethods } from './trials.ts';

/**
 * The methods page: every formula, prior, limit and source, from the constants, functions and seeds that are in use.
 *
 * @param species  those of the yard, built in and a person's own
 */
export const methodParts = (species: readonly Species[], endUses: readonly EndUse[]): MethodPart[] => [
  emcMethods(),
  airMethods(),
  correctionMethods(),
  curveMethods(),
  depthMethods(),
  dryingMethods(),
  callMethods(),
  questionableMethods(),
  shrinkageMethods(),
  sampleMethods(),
  trialMethods(),
  cautions(),
  numbersUsed(),
  fromMemory(species, endUses),
  speciesSources(species),
];
