import './rows-out-of-sight.css';

/** Takes the place of the rows of a long table that are not drawn, above or below those in sight. */
export function RowsOutOfSight({ height }: { height: number }) {
  if (height <= 0) return null;
  return (
    <tr>
      <td className="rows-out-of-sight" style={{ height }} />
    </tr>
  );
}
