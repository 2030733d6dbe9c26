import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { Button } from '../../parts/Button.tsx';
import { TableFrame } from '../../parts/TableFrame.tsx';

/** What wood is for, with the limits that a board is judged by. */
export function EndUsesTable({
  endUses,
  onChange,
}: {
  endUses: readonly (EndUse & { builtIn: boolean })[];
  onChange: (endUse: EndUse) => void;
}) {
  return (
    <TableFrame name="Uses">
      <table className="table">
        <caption>
          A board is ready for a use when its average lies within these, and its core close enough to its
          shell.
        </caption>
        <thead>
          <tr>
            <th scope="col">Use</th>
            <th scope="col" className="number">
              Average, % MC
            </th>
            <th scope="col" className="number">
              Core above shell, at most
            </th>
            <th scope="col">
              <span className="spoken-only">Change it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {endUses.map((endUse) => (
            <tr key={endUse.id}>
              <th scope="row">
                {endUse.name} {!endUse.builtIn && <span className="species-own">own</span>}
                <p className="species-note">{endUse.note}</p>
              </th>
              <td className="number">
                {endUse.minPct} to {endUse.maxPct}
              </td>
              <td className="number">{endUse.maxShellCorePct} %</td>
              <td>
                <Button aria-label={`Change ${endUse.name}`} onClick={() => onChange(endUse)}>
                  Change
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
}
