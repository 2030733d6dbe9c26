import { z } from 'zod';
import { type Call, callSchema } from '../probing/calls/assessment.ts';

/** What one board's label says. Texts are as they are printed; they are fitted to the label when it is drawn. */
export const labelContentSchema = z.object({
  boardId: z.string().min(1).max(80),
  speciesName: z.string().max(200),
  /** With its unit: "27 mm", "1 1/16 in". */
  thicknessText: z.string().max(40),
  /** Latest corrected MC, "12.4 %", or that there is none. */
  mcText: z.string().max(40),
  /** Day of that MC; empty without one. */
  mcDateText: z.string().max(40),
  /** Where the true average lies with 90 % probability, or that the value is only rough; empty without an MC. */
  intervalText: z.string().max(60),
  shellCoreText: z.string().max(80),
  /** Null before the first round. */
  call: callSchema.nullable(),
  /** What the QR code holds: the board ID. */
  qrPayload: z.string().min(1).max(80),
});
export type LabelContent = z.infer<typeof labelContentSchema>;

export interface LabelFinding {
  /** Corrected MC of the board, %; null where no reading of the round counts. */
  averagePct: number | null;
  shellPct: number | null;
  corePct: number | null;
  /** 90 % interval of the average, %. */
  lowPct: number | null;
  highPct: number | null;
  /** Local day as it is to be printed. */
  dateText: string;
}

export interface LabelInput {
  code: string;
  speciesName: string;
  /** 3 to 400. */
  thicknessMm: number;
  units: 'metric' | 'imperial';
  /** Null before the first round. */
  latest: LabelFinding | null;
  call: Call | null;
}

function mcText(mcPct: number): string {
  if (!Number.isFinite(mcPct)) throw new RangeError('A moisture content on a label is a number.');
  return `${mcPct.toFixed(1)} %`;
}

/** To 1 mm or 1/16 in, as rough lumber is measured with a tape (common practice, no source). */
function thicknessText(thicknessMm: number, units: 'metric' | 'imperial'): string {
  if (!(thicknessMm >= 3 && thicknessMm <= 400)) {
    throw new RangeError(`A board is 3 to 400 mm thick, not ${thicknessMm}.`);
  }
  if (units === 'metric') return `${Math.round(thicknessMm)} mm`;
  let parts = Math.round((thicknessMm / 25.4) * 16);
  let ofInch = 16;
  while (parts % 2 === 0 && ofInch > 1) {
    parts /= 2;
    ofInch /= 2;
  }
  const whole = Math.floor(parts / ofInch);
  const rest = parts % ofInch;
  const fraction = rest === 0 ? '' : `${rest}/${ofInch}`;
  return `${[whole || '', fraction].filter((part) => part !== '').join(' ')} in`;
}

/**
 * Pin meters are reliable from about 6 to 30 % MC and only qualitative above (Wood Handbook, chapter 13), which a
 * label must not hide behind a decimal.
 */
function intervalText(averagePct: number, lowPct: number | null, highPct: number | null): string {
  if (averagePct > 30) return 'rough: over 30 %';
  if (averagePct < 6) return 'rough: under 6 %';
  if (lowPct === null || highPct === null) return '';
  return `likely ${lowPct.toFixed(1)}–${mcText(highPct)}`;
}

function shellCoreText(shellPct: number | null, corePct: number | null): string {
  if (shellPct === null && corePct === null) return '';
  const shell = shellPct === null ? 'not probed' : mcText(shellPct);
  const core = corePct === null ? 'not probed' : mcText(corePct);
  return `shell ${shell}, core ${core}`;
}

/**
 * The content of a board's label.
 *
 * @throws RangeError for a thickness outside 3 to 400 mm, or a moisture content that is not a number
 * @example labelContent({ code: 'OAK-07', woodName: 'White oak', thicknessMm: 27, units: 'metric', latest: null, verdict: null }).mcText // 'not probed yet'
 */
export function labelContent(input: LabelInput): LabelContent {
  const { latest } = input;
  const board = {
    boardId: input.code,
    qrPayload: input.code,
    speciesName: input.speciesName,
    thicknessText: thicknessText(input.thicknessMm, input.units),
    call: input.call,
  };
  if (latest === null) {
    return { ...board, mcText: 'not probed yet', mcDateText: '', intervalText: '', shellCoreText: '' };
  }
  if (latest.averagePct === null) {
    return {
      ...board,
      mcText: 'no sound reading',
      mcDateText: latest.dateText,
      intervalText: '',
      shellCoreText: shellCoreText(latest.shellPct, latest.corePct),
    };
  }
  return {
    ...board,
    mcText: mcText(latest.averagePct),
    mcDateText: latest.dateText,
    intervalText: intervalText(latest.averagePct, latest.lowPct, latest.highPct),
    shellCoreText: shellCoreText(latest.shellPct, latest.corePct),
  };
}
