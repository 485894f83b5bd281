import type { Server } from 'node:http';

/** How long what is being answered may take once the server is to end [ms]. */
const PATIENCE = 3000;
/** How often connections are looked at that have been answered [ms]. */
const LOOK = 20;

/**
 * Ends a server: it takes no new connection, answers what it is being asked, and breaks off what takes longer.
 *
 * @param patience how long that may take [ms]
 */
export async function endAfterAnswers(
  server: Pick<Server, 'close' | 'closeIdleConnections' | 'closeAllConnections'>,
  patience = PATIENCE,
): Promise<void> {
  const answered = setInterval(() => server.closeIdleConnections(), LOOK);
  const over = setTimeout(() => server.closeAllConnections(), patience);
  await new Promise<void>((ended) => server.close(() => ended()));
  clearInterval(answered);
  clearTimeout(over);
}
