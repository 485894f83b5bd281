/** Fetches what a page starts from: catalogue, shop and briefs, as the bytes of one JSON document. */
export async function fetchStart(address: string): Promise<ArrayBuffer> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} answered ${response.status}`);
  return response.arrayBuffer();
}
