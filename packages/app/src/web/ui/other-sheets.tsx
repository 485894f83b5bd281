/** The ways to the sheets beside the desk. */
export function OtherSheets() {
  return (
    <>
      <a className="tool" href="./office.html" title="Quotes, parts, prices and people of the shop">
        Office
      </a>
      <a className="tool" href="./machines.html" title="Machines by serial number: build, yard test, service">
        Machines
      </a>
      <a className="tool" href="./sums.html" title="Every sum behind the proof, worked out step by step">
        Sums
      </a>
    </>
  );
}
