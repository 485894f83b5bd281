/** What the office is for. */
export function OfficeStart() {
  return (
    <>
      <h1>The office</h1>
      <p>What the shop keeps beside its jobs: quotes, prices and parts, people.</p>
    </>
  );
}
