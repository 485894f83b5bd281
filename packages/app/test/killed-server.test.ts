import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { killServer } from './killed-server.ts';

describe('The server killed while it saves', () => {
  it('has every save that it acknowledged when it starts again', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'spraywright-killed-'));
    const { acknowledged, lost } = await killServer(folder, [7, 40]);
    expect(lost).toBe(0);
    expect(acknowledged).toBeGreaterThanOrEqual(47);
    rmSync(folder, { recursive: true, force: true });
  }, 300_000);
});
