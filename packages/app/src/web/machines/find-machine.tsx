/** All machines, found by serial number, customer or title. */
export function FindMachine() {
  return <h1>Machines by serial number</h1>;
}
