import { SEASON_SHARE } from '../wood/climate/swings.ts';
import { airMovementSchema, movements } from '../wood/drying/air-movement.ts';
import { exposureFactor, type FaceExposure, faceExposureSchema } from '../wood/drying/board-history.ts';
import { aheadLogSd, pointCount } from '../wood/drying/forecast.ts';
import {
  dryingParameters,
  dryingPrior,
  modelErrorPct,
  priorPace,
  THICKNESS_POWER,
  withinGroupSd,
} from '../wood/drying/history-fit.ts';
import { ANCHOR_MC_PCT } from '../wood/drying/model/drying-law.ts';
import { Z_90 } from '../wood/maths/gaussian.ts';
import { FIBER_SATURATION_PCT } from '../wood/moisture/fiber-saturation.ts';
import { GREEN } from '../wood/moisture/most-water.ts';
import { type DryingClass, dryingClassSchema } from '../wood/species/drying-class.ts';
import { message } from '../words/message.ts';
import { type MethodPart, partOf } from './method-part.ts';

const UNKNOWNS = {
  logDiffusivity: 'methods.drying.diffusivity',
  logSurface: 'methods.drying.surface',
  logStartMc: 'methods.drying.start',
  emcOffsetPct: 'methods.drying.emc',
  exponent: 'methods.drying.exponent',
} as const satisfies Record<(typeof dryingParameters)[number], string>;

const FACES = {
  open: 'methods.drying.face-open',
  sun: 'methods.drying.face-sun',
  bottom: 'methods.drying.face-bottom',
  bark: 'methods.drying.face-bark',
  sealed: 'methods.drying.face-sealed',
} as const satisfies Record<FaceExposure, string>;

const CLASSES = {
  refractory: 'methods.drying.class-refractory',
  'lowland-oak': 'methods.drying.class-lowland-oak',
  'upland-oak': 'methods.drying.class-upland-oak',
  'ring-porous': 'methods.drying.class-ring-porous',
  maple: 'methods.drying.class-maple',
  'dense-hardwood': 'methods.drying.class-dense-hardwood',
  'light-hardwood': 'methods.drying.class-light-hardwood',
  gum: 'methods.drying.class-gum',
  pine: 'methods.drying.class-pine',
  softwood: 'methods.drying.class-softwood',
  wetwood: 'methods.drying.class-wetwood',
  baldcypress: 'methods.drying.class-baldcypress',
} as const satisfies Record<DryingClass, string>;

const THICKNESS_MM = 28;

/** Outdoors in the middle of the United States; the prior hardly depends on it. */
const AIR = Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.7 }));

const toTenth = (value: number): number => Math.round(10 * value) / 10;

/** The priors of a board as the model has them, in plain numbers. */
function priorRows() {
  const { mean, covariance } = dryingPrior({
    thicknessMm: THICKNESS_MM,
    basicSpecificGravity: 0.56,
    dryingClass: 'upland-oak',
    start: { atMs: 0, mcPct: null, logSd: 0.2, shellRatio: 1 },
    stays: [{ fromMs: 0, air: AIR }],
  });
  return dryingParameters.map((name, at) => {
    const middle = mean[at] ?? Number.NaN;
    const sd = Math.sqrt(covariance[at]?.[at] ?? Number.NaN);
    const shown = (value: number): number =>
      Number((name.startsWith('log') ? Math.exp(value) : value).toPrecision(3));
    return [message(UNKNOWNS[name]), shown(middle), shown(middle - Z_90 * sd), shown(middle + Z_90 * sd)];
  });
}

export const dryingMethods = (): MethodPart =>
  partOf(
    'drying',
    message('methods.drying.title'),
    [
      message('methods.drying.law'),
      message('methods.drying.diffusivity-formula', { saturationPct: FIBER_SATURATION_PCT }),
      message('methods.drying.vapor-formula'),
      message('methods.drying.bradley'),
      message('methods.drying.exponent-formula', { anchorPct: ANCHOR_MC_PCT }),
      message('methods.drying.face-formula'),
      message('methods.drying.unknowns'),
      message('methods.drying.classes'),
      message('methods.drying.thickness', { timesAsLong: toTenth(2 ** (2 - THICKNESS_POWER)) }),
      message('methods.drying.green', { greenSharePct: 100 * GREEN.share }),
      message('methods.drying.fit', { spreads: Object.values(withinGroupSd), modelPoints: modelErrorPct }),
      message('methods.drying.places'),
      message('methods.drying.ahead', { paceSd: aheadLogSd, seasonSharePct: 100 * SEASON_SHARE }),
      message('methods.drying.runs', { runs: pointCount }),
      message('methods.drying.likely'),
    ],
    message('methods.drying.source'),
    {
      caption: message('methods.drying.prior-caption', { boardMm: THICKNESS_MM }),
      heads: [
        message('methods.drying.unknown'),
        message('methods.drying.middle'),
        message('methods.drying.low'),
        message('methods.drying.high'),
      ],
      rows: priorRows(),
      isOfUnlike: true,
    },
    {
      caption: message('methods.drying.faces-caption'),
      heads: [message('methods.drying.face'), message('methods.drying.share')],
      rows: faceExposureSchema.options.map((face) => [message(FACES[face]), exposureFactor[face]]),
    },
    {
      caption: message('methods.drying.classes-caption'),
      heads: [message('methods.drying.class'), message('methods.drying.diffusivity')],
      rows: dryingClassSchema.options.map((each) => [
        message(CLASSES[each]),
        priorPace.diffusivity.medians[each],
      ]),
    },
    {
      caption: message('methods.drying.air-caption'),
      heads: [
        message('methods.drying.air'),
        message('methods.drying.share'),
        message('methods.drying.pace'),
        message('methods.drying.pace-sd'),
      ],
      rows: airMovementSchema.options.map((each) => [
        message(`places.movement.${each}`),
        movements[each].surface,
        movements[each].pace,
        movements[each].paceLogSd,
      ]),
    },
  );
