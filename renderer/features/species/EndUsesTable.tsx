import type { EndUseRow } from '../../../shared-core/contract/requests/catalog.ts';
import { Button } from '../../ui/Button.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { SourcesLink } from '../../ui/SourcesLink.tsx';
import { useWords } from '../../words.ts';
import { DamagedMark } from '../recovery/DamagedMark.tsx';
import styles from './species.module.css';

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
      <DataTable
        name={say('species.uses')}
        caption={say('use.caption')}
        rows={endUses}
        keyOf={({ id }) => id}
        columns={[
          {
            id: 'use',
            head: say('use.use'),
            cell: ({ name, builtIn, isDamaged }) => (
              <>
                <span translate="no">{formats.named(name)}</span> {isDamaged && <DamagedMark />}
                {!builtIn && <span className={styles.own}>{say('species.own')}</span>}
              </>
            ),
            below: ({ note, isDamaged }) =>
              isDamaged ? say('damaged.use') : note && <span translate="no">{formats.named(note)}</span>,
            sortBy: ({ name }) => formats.named(name),
          },
          {
            id: 'target',
            head: say('use.target'),
            cell: (endUse) => formats.mcRange(endUse),
            sortBy: ({ minPct, maxPct }) => minPct + maxPct,
            align: 'end',
          },
          {
            id: 'tolerance',
            head: say('use.tolerance'),
            cell: ({ tolerancePoints }) => formats.points(tolerancePoints),
            sortBy: ({ tolerancePoints }) => tolerancePoints,
            align: 'end',
          },
          {
            id: 'shell-core',
            head: say('use.shell-core'),
            cell: ({ maxShellCorePct }) =>
              maxShellCorePct === null ? say('use.any-difference') : formats.points(maxShellCorePct),
            sortBy: ({ maxShellCorePct }) => maxShellCorePct ?? Number.POSITIVE_INFINITY,
            align: 'end',
          },
          {
            id: 'edit',
            head: say('common.edit'),
            headSpokenOnly: true,
            cell: (endUse) => (
              <Button aria-label={say('use.edit', { useName: endUse.name })} onClick={() => onEdit(endUse)}>
                {say('common.edit')}
              </Button>
            ),
          },
        ]}
      />
      <SourcesLink part="calls" />
    </>
  );
}
