import { missingFigures } from '../../../shared-core/wood/species/missing-figures.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { DataTable } from '../../ui/DataTable.tsx';
import { useWords } from '../../words.ts';
import styles from './species.module.css';

interface Direction {
  name: string;
  /** To oven-dry, %. */
  shrinkagePct: number | null;
  /** For each point of MC; undefined where there is none for this direction. */
  changePerPoint: number | undefined;
}

/** What is known about a species, and for what is not known, what that prevents. */
export function SpeciesFigures({ species }: { species: Species }) {
  const { say, formats } = useWords();
  const missing = missingFigures(species);
  const { basicSpecificGravity: rawGravity, changeCoefficient: change } = species;
  const directions: Direction[] = [
    {
      name: say('species.direction.radial'),
      shrinkagePct: species.radialPct,
      changePerPoint: change?.radial,
    },
    {
      name: say('species.direction.tangential'),
      shrinkagePct: species.tangentialPct,
      changePerPoint: change?.tangential,
    },
    {
      name: say('species.direction.volumetric'),
      shrinkagePct: species.volumetricPct,
      changePerPoint: undefined,
    },
  ];
  return (
    <>
      {rawGravity !== null && <p>{say('species.specific-gravity-is', { rawGravity })}</p>}
      <DataTable
        name={say('species.figures')}
        columns={[
          { id: 'direction', head: say('species.direction'), cell: ({ name }) => name },
          {
            id: 'shrinkage',
            head: say('species.shrinkage'),
            align: 'end',
            cell: ({ shrinkagePct }) =>
              shrinkagePct === null ? say('species.not-known') : formats.rawPercent(shrinkagePct),
          },
          ...(change
            ? [
                {
                  id: 'change',
                  head: say('species.change'),
                  align: 'end' as const,
                  cell: ({ changePerPoint }: Direction) =>
                    changePerPoint !== undefined && formats.raw(changePerPoint),
                },
              ]
            : []),
        ]}
        rows={directions}
        keyOf={({ name }) => name}
      />
      {missing.length > 0 && (
        <ul className={styles.missing} aria-label={say('species.missing')}>
          {missing.map((each) => (
            <li key={each.code}>{say(each)}</li>
          ))}
        </ul>
      )}
    </>
  );
}
