const COLUMNS = ['1', '2', '3', '4', '5', '6', '7', '8'];
const ROWS = ['A', 'B', 'C', 'D', 'E', 'F'];

/** Zones around the frame: "look at C4". */
export function Zones() {
  const strip = (side: string, names: readonly string[]) => (
    <div className={`zones ${side}`} aria-hidden="true">
      {names.map((name) => (
        <span key={name}>{name}</span>
      ))}
    </div>
  );
  return (
    <>
      {strip('top', COLUMNS)}
      {strip('bottom', COLUMNS)}
      {strip('at-left', ROWS)}
      {strip('at-right', ROWS)}
    </>
  );
}
