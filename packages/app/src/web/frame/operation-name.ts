/** A name that nothing else that is sent has; a page served in clear to other machines has no `crypto.randomUUID`. */
export function operationName(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((b) => b.toString(16).padStart(2, '0')).join('');
}
