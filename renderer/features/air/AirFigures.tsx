import css from './air.module.css';

/** Results of the air that was typed, and what they mean: read out when they change. */
export function AirFigures({
  figures,
  note,
}: {
  figures: readonly { name: string; value: string }[];
  note?: string;
}) {
  return (
    <>
      <dl className={css.figures} aria-live="polite">
        {figures.map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {note && <p className={css.note}>{note}</p>}
    </>
  );
}
