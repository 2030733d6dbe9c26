import type { Depth } from '../../../shared-core/probing/readings/reading.ts';

/** How deep a value was read: a square for the shell, a triangle for the core. */
export function DepthMark({ depth, x, y }: { depth: Depth; x: number; y: number }) {
  return depth === 'shell' ? (
    <rect className="finding-shell" x={x - 5} y={y - 5} width="10" height="10" />
  ) : (
    <path className="finding-core" d={`M${x} ${y - 7}l6.5 12h-13z`} />
  );
}
