import { useState } from 'react';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { useQuery } from '../../data/useQuery.ts';
import { BoardForm } from '../board/BoardForm.tsx';
import { DrynessSuspicion } from '../board/DrynessSuspicion.tsx';

/** The ways out where the readings of a round are drier than the board can be: the same as on its page. */
export function DrynessQuestion({
  boardId,
  readings,
}: {
  boardId: number;
  readings: readonly JudgedReading[];
}) {
  const [isEditing, setEditing] = useState(false);
  const { output } = useQuery('boards.get', { id: boardId });
  if (output === null) return null;
  const { board } = output;
  return (
    <>
      <DrynessSuspicion
        board={board}
        readings={readings}
        question="round.dryness-question"
        onEdit={() => setEditing(true)}
      />
      {isEditing && <BoardForm board={board} onClose={() => setEditing(false)} />}
    </>
  );
}

/** Whether readings are drier than the board can be. */
export const isTooDry = (readings: readonly JudgedReading[]): boolean =>
  readings.some(({ suspicions }) =>
    suspicions.some(({ rule }) => rule === 'dry-too-soon' || rule === 'drier-than-its-air'),
  );
