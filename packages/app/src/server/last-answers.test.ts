import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, it } from 'vitest';
import { endAfterAnswers } from './last-answers.ts';

/** A server that lets the test answer, with a request to it under way. */
async function asked() {
  const waiting: ServerResponse[] = [];
  const server = createServer((_, answer) => void waiting.push(answer));
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  const answer = fetch(address).then(
    (a) => a.status,
    () => 'broken off',
  );
  while (waiting.length === 0) await new Promise((then) => setTimeout(then, 1));
  return { server, address, answer, waiting: waiting[0]! };
}

it('A server that is told to end answers what it is being asked, and nobody new', async () => {
  const { server, address, answer, waiting } = await asked();
  const ended = endAfterAnswers(server, 60_000);
  await expect(fetch(address)).rejects.toThrow();
  waiting.end('done');
  expect(await answer).toBe(200);
  await ended;
});

it('A server that is told to end waits for no answer for ever', async () => {
  const { server, answer } = await asked();
  await endAfterAnswers(server, 50);
  expect(await answer).toBe('broken off');
});
