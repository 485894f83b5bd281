import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { postgresServer } from './postgres-server.ts';
import { saveThroughSeveral } from './several-processes.ts';

describe('Four processes on the same records', () => {
  it('lose no edit of two people in one SQLite file', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'spraywright-several-'));
    const { acknowledged, lost, failed } = await saveThroughSeveral(folder, 4, 10);
    expect(failed).toEqual([]);
    expect({ acknowledged, lost }).toEqual({ acknowledged: 80, lost: 0 });
    rmSync(folder, { recursive: true, force: true });
  }, 300_000);

  it('lose no edit of two people on PostgreSQL', async () => {
    const database = await postgresServer();
    try {
      const { acknowledged, lost, failed } = await saveThroughSeveral(await database.newDatabase(), 4, 10);
      expect(failed).toEqual([]);
      expect({ acknowledged, lost }).toEqual({ acknowledged: 80, lost: 0 });
    } finally {
      database.remove();
    }
  }, 300_000);
});
