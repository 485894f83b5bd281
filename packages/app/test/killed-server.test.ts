import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { killServer } from './killed-server.ts';
import { postgresServer } from './postgres-server.ts';

describe('The server killed while it saves', () => {
  it('has every save that it acknowledged when it starts again', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'spraywright-killed-'));
    const { acknowledged, lost } = await killServer(folder, [7, 40]);
    expect(lost).toBe(0);
    expect(acknowledged).toBeGreaterThanOrEqual(47);
    rmSync(folder, { recursive: true, force: true });
  }, 300_000);

  it('loses nothing on PostgreSQL either, when the database is killed with it', async () => {
    const database = await postgresServer();
    try {
      const { acknowledged, lost } = await killServer(await database.newDatabase(), [15, 40], database);
      expect(lost).toBe(0);
      expect(acknowledged).toBeGreaterThanOrEqual(55);
    } finally {
      database.remove();
    }
  }, 300_000);
});
