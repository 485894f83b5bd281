/** Once loaded, the sheets open without a connection too. */
export function keepOnDevice(): void {
  if (!('serviceWorker' in navigator)) return;
  const register = () =>
    void navigator.serviceWorker.register(new URL('sw.js', document.baseURI)).catch(() => undefined);
  if (document.readyState === 'complete') register();
  else addEventListener('load', register);
}
