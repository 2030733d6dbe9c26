import type { EndUseRow } from '../../../shared-core/contract/requests/catalog.ts';
import { Button } from '../../ui/Button.tsx';
import { Sources } from '../../ui/Sources.tsx';
import { TableFrame } from '../../ui/TableFrame.tsx';
import { useWords } from '../../words.ts';

/** What wood is for, with the limits that its call goes by. */
export function EndUsesTable({
  endUses,
  onEdit,
}: {
  endUses: readonly EndUseRow[];
  onEdit: (endUse: EndUseRow) => void;
}) {
  const { say, formats } = useWords();
  return (
    <>
      <TableFrame name={say('species.uses')}>
        <table className="table">
          <caption>{say('use.caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('use.use')}</th>
              <th scope="col" className="number">
                {say('use.target')}
              </th>
              <th scope="col" className="number">
                {say('use.shell-core')}
              </th>
              <th scope="col">
                <span className="spoken-only">{say('common.edit')}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {endUses.map((endUse) => (
              <tr key={endUse.id}>
                <th scope="row">
                  <span translate="no">{endUse.name}</span>{' '}
                  {!endUse.builtIn && <span className="species-own">{say('species.own')}</span>}
                  {endUse.note && (
                    <p className="species-note" translate="no">
                      {endUse.note}
                    </p>
                  )}
                </th>
                <td className="number">{formats.mcRange(endUse)}</td>
                <td className="number">{formats.points(endUse.maxShellCorePct)}</td>
                <td>
                  <Button
                    aria-label={say('use.edit', { useName: endUse.name })}
                    onClick={() => onEdit(endUse)}
                  >
                    {say('common.edit')}
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      <Sources
        sources={endUses
          .filter(({ source }) => source !== '')
          .map(({ name, source }) => say('use.source-of', { useName: name, source }))}
      />
    </>
  );
}
