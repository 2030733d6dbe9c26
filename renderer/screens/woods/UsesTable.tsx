import type { Use } from '../../../shared-core/probing/assessment.ts';
import { Button } from '../../parts/Button.tsx';
import { TableFrame } from '../../parts/TableFrame.tsx';

/** What wood is for, with the limits that a board is judged by. */
export function UsesTable({
  uses,
  onChange,
}: {
  uses: readonly (Use & { builtIn: boolean })[];
  onChange: (use: Use) => void;
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
          {uses.map((use) => (
            <tr key={use.id}>
              <th scope="row">
                {use.name} {!use.builtIn && <span className="wood-own">own</span>}
                <p className="wood-note">{use.note}</p>
              </th>
              <td className="number">
                {use.minPct} to {use.maxPct}
              </td>
              <td className="number">{use.maxShellCorePct} %</td>
              <td>
                <Button aria-label={`Change ${use.name}`} onClick={() => onChange(use)}>
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
