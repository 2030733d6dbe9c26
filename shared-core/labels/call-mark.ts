import type { Call } from '../probing/calls/assessment.ts';

export type CallShape = 'disc' | 'house' | 'drop' | 'diamond' | 'triangle';

/** How a call differs from the others without color: by its shape, beside its word and letter of the catalog. */
export interface CallMark {
  shape: CallShape;
  /** Only "ready" is a filled shape: it is the one looked for from across the yard. No open one is a box to tick. */
  filled: boolean;
}

export const callMarks: Readonly<Record<Call, CallMark>> = {
  ready: { shape: 'disc', filled: true },
  'bring-in': { shape: 'house', filled: false },
  'keep-drying': { shape: 'drop', filled: false },
  'too-dry': { shape: 'diamond', filled: false },
  'probe-again': { shape: 'triangle', filled: false },
};

/** Outline of the shape in the square with this upper left corner and side, as SVG path data in the same unit. */
export function callShapePath(shape: CallShape, x: number, y: number, side: number): string {
  const rounded = (value: number) => Number(value.toFixed(4));
  const at = (across: number, down: number) => `${rounded(x + across * side)} ${rounded(y + down * side)}`;
  switch (shape) {
    case 'disc': {
      const radius = rounded(side / 2);
      const arc = `A${radius} ${radius} 0 0 1 `;
      return `M${at(0, 0.5)}${arc} ${at(1, 0.5)}${arc} ${at(0, 0.5)}Z`;
    }
    case 'house':
      return `M${at(0.5, 0)}L${at(0.96, 0.42)}L${at(0.96, 1)}L${at(0.04, 1)}L${at(0.04, 0.42)}Z`;
    case 'drop': {
      // From the tip along both tangents of the circle.
      const radius = rounded(0.36 * side);
      return `M${at(0.5, 0)}L${at(0.7975, 0.4376)}A${radius} ${radius} 0 1 1 ${at(0.2025, 0.4376)}Z`;
    }
    case 'diamond':
      return `M${at(0.5, 0)}L${at(1, 0.5)}L${at(0.5, 1)}L${at(0, 0.5)}Z`;
    case 'triangle':
      return `M${at(0.5, 0)}L${at(1, 1)}L${at(0, 1)}Z`;
  }
}
