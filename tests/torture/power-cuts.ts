import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { prepareClass } from '../support/prepared-class.ts';
import { Random } from '../support/random.ts';
import { ServerProcess, temporaryFolder } from '../support/server-process.ts';
import { AnsweringClass, type Finding } from './answering-class.ts';
import { sum, type Report } from './report.ts';

const source = fileURLToPath(new URL('power-cut.c', import.meta.url));

/** The same load, but only what was synced is left: with the store as it is, and with settings that must fail. */
export async function powerCuts(count: number, seed: number): Promise<Report> {
  const folder = temporaryFolder();
  const library = join(folder, 'power-cut.so');
  const built = spawnSync('cc', ['-shared', '-fPIC', '-O2', '-o', library, source, '-ldl', '-pthread']);
  if (process.platform !== 'linux' || built.status !== 0) {
    rmSync(folder, { recursive: true });
    const why = process.platform === 'linux' ? 'there is no C compiler (cc)' : 'this works on Linux only';
    return { ok: true, text: `Power cuts were left out: ${why}.` };
  }
  try {
    const safe = await cutPower(library, count, seed);
    const few = Math.max(3, Math.ceil(count / 10));
    const normal = await cutPower(library, few, seed + 1, 'normal');
    const off = await cutPower(library, few, seed + 2, 'off');
    const share = ({ lost, acknowledged }: Finding) =>
      `${String(lost)} of ${String(acknowledged)} lost (${((100 * lost) / acknowledged).toFixed(1)} %)`;
    return {
      ok: safe.lost + safe.wrong === 0 && normal.lost > 0 && off.lost > 0,
      text:
        `${String(count)} modelled power cuts: ${share(safe)}, ${String(safe.wrong)} counted twice or replaced. ` +
        `That the test can fail: with synchronous=normal ${share(normal)}, with synchronous=off ${share(off)}, ` +
        `${String(few)} cuts each.`,
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function cutPower(
  library: string,
  count: number,
  seed: number,
  synchronous?: 'off' | 'normal',
): Promise<Finding> {
  const random = new Random(seed);
  const prepared = await prepareClass(30);
  const synced = temporaryFolder();
  cpSync(prepared.dataDir, synced, { recursive: true });
  const env = { LD_PRELOAD: library, POWER_FROM: prepared.dataDir, POWER_TO: synced };
  const server = await ServerProcess.start({
    dataDir: prepared.dataDir,
    env,
    ...(synchronous ? { synchronous } : {}),
  });
  const answering = new AnsweringClass(server, prepared, random);
  const findings: Finding[] = [];
  for (let run = 0; run < count; run += 1) {
    const finding = await answering.round(async () => {
      await server.kill();
      rmSync(prepared.dataDir, { recursive: true });
      mkdirSync(prepared.dataDir, { mode: 0o700 });
      cpSync(synced, prepared.dataDir, { recursive: true });
      await server.resume();
    });
    findings.push(finding);
  }
  await server.remove();
  rmSync(synced, { recursive: true });
  return sum(findings);
}
