/** Results of the air that was typed: read out when they change. */
export function AirFigures({ figures }: { figures: readonly { name: string; value: string }[] }) {
  return (
    <dl className="air-figures" aria-live="polite">
      {figures.map(({ name, value }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
