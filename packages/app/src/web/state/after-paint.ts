/** Runs after the frame in which the page stands as it now is has been painted. */
export function afterPaint(then: () => void): void {
  requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = then;
    channel.port2.postMessage(0);
  });
}
